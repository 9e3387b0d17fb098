import type { Laser, Zero } from '../recipe/stock';
import type { BlankPoint } from '../toolpath/place';

/** mm */
export interface BlankSize {
    readonly width: number;
    readonly height: number;
}

/** Where X 0 Y 0 is on a blank when the laser's block does not say. */
export const usualZero: Zero = 'lower-left';

/** Where each lies on a blank: shares of its width and of its height, from the top left. */
const places: Readonly<Record<Zero, readonly [number, number]>> = {
    'lower-left': [0, 1],
    'lower-right': [1, 1],
    'upper-left': [0, 0],
    'upper-right': [1, 0],
    middle: [0.5, 0.5],
};

export function zeroOf(laser: Laser | undefined): Zero {
    return laser?.zero?.value ?? usualZero;
}

/**
 * Where X 0 Y 0 of every file for the machine lies (mm on the blank, y downwards), and the head comes from and
 * goes back to.
 */
export function originOn(blank: BlankSize | undefined, laser: Laser | undefined, zero = zeroOf(laser)): BlankPoint {
    const [across, down] = places[zero];
    return { x: across * (blank?.width ?? 0), y: down * (blank?.height ?? 0) };
}

/** "lower left corner", "middle". */
export function zeroWords(zero: Zero): string {
    return zero === 'middle' ? zero : `${zero.replace('-', ' ')} corner`;
}

/** The same sentence in the drawing, the machine file and on the job sheet, so that nobody lays a blank by two. */
export function originSentence(laser: Laser | undefined, what = 'blank'): string {
    return `X 0 Y 0 is the ${zeroWords(zeroOf(laser))} of the ${what}, X to the right, Y away from you`;
}
