import type { Region } from '../geometry/region';
import { transform } from '../geometry/transform';
import type { FlipAxis } from '../recipe/step';

/** Which of its two large faces a blank shows. */
export type Side = 'front' | 'back';

/** How a blank lies on the bed, against how it was laid there first: what has changed places by being turned over. */
export interface Lie {
    /** Left and right. */
    readonly across: boolean;
    /** The far and the near side. */
    readonly down: boolean;
}

/** mm */
interface Size {
    readonly width: number;
    readonly height: number;
}

/** As a blank is laid down first: its front up. */
export const firstLie: Lie = { across: false, down: false };

/** Twice about different lines its front is up again, turned by half a turn. */
export function sideOf({ across, down }: Lie): Side {
    return across === down ? 'front' : 'back';
}

export function turnedLie({ across, down }: Lie, axis: FlipAxis): Lie {
    return axis === 'upright' ? { across: !across, down } : { across, down: !down };
}

export function isSameLie(a: Lie, b: Lie): boolean {
    return a.across === b.across && a.down === b.down;
}

/** A region of a blank that lies one way, in the coordinates of the face that is up when it lies another way. */
export function regionAs(region: Region, from: Lie, to: Lie, { width, height }: Size): Region {
    const across = from.across !== to.across;
    const down = from.down !== to.down;
    if (!across && !down) return region;
    return transform(region, {
        a: across ? -1 : 1,
        b: 0,
        c: 0,
        d: down ? -1 : 1,
        e: across ? width : 0,
        f: down ? height : 0,
    });
}
