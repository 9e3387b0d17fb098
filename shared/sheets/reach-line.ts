import type { Bounds } from '../geometry/region';
import type { MachinePoint } from '../plan/laid-piece';
import { showNumber } from '../quantity/show';
import type { BlankPoint } from '../toolpath/place';

/**
 * What the head moves over in the machine's own figures, "X -19.84 to 119.84, Y 0 to 80 mm": from the origin, Y
 * upwards, rounded outwards to a hundredth, so that it never says less. @param reach mm on the blank, y downwards
 */
export function reachOnMachine({ minX, maxX, minY, maxY }: Bounds, origin: BlankPoint): string {
    const x = range(minX - origin.x, maxX - origin.x);
    const y = range(origin.y - maxY, origin.y - minY);
    return `X ${x}, Y ${y} mm`;
}

function range(low: number, high: number): string {
    return `${hundredths(Math.floor(low * 100 + 1e-6))} to ${hundredths(Math.ceil(high * 100 - 1e-6))}`;
}

function hundredths(count: number): string {
    return String(count === 0 ? 0 : count / 100);
}

/** "X 10 Y 40 mm". */
export function pointWords({ x, y }: MachinePoint): string {
    return `X ${showNumber(x, 2)} Y ${showNumber(y, 2)} mm`;
}
