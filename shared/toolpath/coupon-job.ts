import type { CouponSheet } from '../burn/coupon-sheet';
import { reversed } from '../geometry/reverse';
import { rectangle } from '../geometry/shapes';
import { showNumber } from '../quantity/show';
import { cutPaths } from './cut';
import { hatch } from './hatch';
import type { MachineJob, Work } from './job';
import type { Motion } from './motion';
import type { Path } from './path';

/** How far beside a strip its cut begins, mm: a start on the edge would notch it. */
const LEAD_IN = 1;

/**
 * The machine's work for a coupon: each square as an area, both ways, in the order of the numbers, then those as single lines, then the strips, then the opening and its plugs.
 * @param overtravel run-up of the squares (mm); what each speed needs if absent
 */
export function couponJob(sheet: CouponSheet, motion: Motion, overtravel?: number): MachineJob {
    const work: Work[] = [];
    const runUp = overtravel === undefined ? {} : { overtravel };
    for (const square of sheet.squares) {
        const lines = hatch(rectangle(square.x, square.y, square.size, square.size), sheet.pitch, 0);
        if (lines === undefined) continue;
        const { power, speed, passes } = square;
        const name = `square ${square.number}: ${showNumber(square.powerRatio * 100, 3)} % at ${speed} mm/s${passes > 1 ? ` x ${passes}` : ''}`;
        work.push({ kind: 'area', name, hatch: lines, bothWays: true, power, speed, passes, ...runUp });
    }
    const paths = sheet.labels.map((points) => ({ points }));
    work.push({ kind: 'path', name: 'numbers', paths, power: sheet.labelPower, speed: sheet.labelSpeed, passes: 1 });
    for (const strip of sheet.strips ?? []) {
        const { power, speed, passes, number, x, y, length, drawn } = strip;
        const name = `strip ${number}: ${showNumber(strip.powerRatio * 100, 3)} % at ${speed} mm/s${passes > 1 ? ` x ${passes}` : ''}`;
        const cut = cutPaths(rectangle(x, y, length, drawn), { leadIn: LEAD_IN });
        work.push({ kind: 'path', name, paths: cut, power, speed, passes, air: true });
    }
    work.push(...ladderWork(sheet));
    return { work, motion, origin: { x: 0, y: sheet.height } };
}

/** The opening, led in from its inside, and then the plugs. */
function ladderWork({ ladder }: CouponSheet): Work[] {
    if (ladder === undefined) return [];
    const { settings, opening, plugs } = ladder;
    const { power, speed, passes } = settings;
    const cut = (name: string, paths: Path[]): Work => ({ kind: 'path', name, paths, power, speed, passes, air: true });
    const inside = { rings: rectangle(opening.x, opening.y, opening.length, opening.width).rings.map(reversed) };
    return [
        cut('opening for the plugs', cutPaths(inside, { leadIn: LEAD_IN })),
        ...plugs.map(({ number, x, y, length, width, larger }) =>
            cut(
                `plug ${number}: ${showNumber(larger, 3)} mm larger all round`,
                cutPaths(rectangle(x, y, length, width), { leadIn: LEAD_IN }),
            ),
        ),
    ];
}
