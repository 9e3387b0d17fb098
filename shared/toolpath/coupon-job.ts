import type { CouponSheet } from '../burn/coupon-sheet';
import { rectangle } from '../geometry/shapes';
import { hatch } from './hatch';
import type { Job, Work } from './job';
import type { Motion } from './motion';

/** The machine's work for a coupon: each square as an area, both ways, weakest first, then the labels as single lines. */
export function couponJob(sheet: CouponSheet, motion: Motion): Job {
    const work: Work[] = [];
    for (const square of sheet.squares) {
        const lines = hatch(rectangle(square.x, square.y, square.size, square.size), sheet.pitch, 0);
        if (lines === undefined) continue;
        const { power, speed, passes } = square;
        const name = `${Math.round(square.powerRatio * 100)} % at ${speed} mm/s${passes > 1 ? ` x ${passes}` : ''}`;
        work.push({ kind: 'area', name, hatch: lines, bothWays: true, power, speed, passes });
    }
    work.sort((a, b) => energyAlong(a) - energyAlong(b));
    const paths = sheet.labels.map((points) => ({ points }));
    work.push({ kind: 'path', name: 'labels', paths, power: sheet.labelPower, speed: sheet.labelSpeed, passes: 1 });
    return { work, motion, home: { x: 0, y: sheet.height } };
}

/** Joules on a millimetre of line, all passes: what makes a square likely to flare. */
function energyAlong({ power, speed, passes }: Work): number {
    return (power / speed) * passes;
}
