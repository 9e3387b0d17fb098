import { islands } from '../geometry/islands';
import { centroid } from '../geometry/measure';
import type { BlankPoint } from '../toolpath/place';
import { seenAs } from './lies';
import { originOn } from './origin';
import type { Plan } from './plan';
import type { SetUp } from './set-ups';

/** A place as the machine counts: mm from X 0 Y 0, X to the right, Y away from whoever stands before it. */
export interface MachinePoint {
    readonly x: number;
    readonly y: number;
}

/** How a blank lies against how it was planned: turned about X 0 Y 0 (rad, anticlockwise from above), then moved (mm). */
export interface Lain {
    readonly turn: number;
    readonly x: number;
    readonly y: number;
}

/** What measured marks say of how a blank lies. */
export interface MeasuredLie extends Lain {
    /** Distances between measured marks against planned ones: 1 where they agree. The files are never scaled by it. */
    readonly scale: number;
    /** How far each measured mark is off where it would be by turn and move alone, mm. */
    readonly residuals: readonly number[];
}

/** A mark as it is planned, and where it was found; absent where it was not measured. */
export interface MarkPair {
    readonly planned: MachinePoint;
    readonly measured?: MachinePoint;
}

/** Marks nearer to each other say nothing of a turn, mm. */
const tooNear = 1;

/** The marks by which a set-up is found, in the machine's figures: by X, then by Y. None where the recipe's own work has none. */
export function plannedMarks(plan: Plan, { place, blank, lasers }: SetUp): MachinePoint[] {
    const [laser] = lasers;
    if (place?.mark === undefined || laser === undefined || place.mark.blank !== blank.name) return [];
    const origin = originOn(blank.size, plan.recipe.laser);
    return islands(seenAs(place.mark, laser, plan).region)
        .flatMap((island) => centroid(island) ?? [])
        .map((at) => onMachine(at, origin))
        .toSorted((a, b) => (Math.abs(a.x - b.x) > 0.01 ? a.x - b.x : a.y - b.y));
}

export function onMachine({ x, y }: BlankPoint, origin: BlankPoint): MachinePoint {
    return { x: x - origin.x, y: origin.y - y };
}

/**
 * Turn and move that bring planned marks onto measured ones with the least sum of squares, and what is left (Procrustes without
 * scaling, own derivation for the plane: with both sets about their means, the turn is the angle of the sums of dot and cross products). Undefined for
 * fewer than two measured marks, or where they lie within a millimetre of each other.
 */
export function measuredLie(pairs: readonly MarkPair[]): MeasuredLie | undefined {
    const found = pairs.flatMap(({ planned, measured }) => (measured === undefined ? [] : [{ planned, measured }]));
    if (found.length < 2) return undefined;
    const from = meanOf(found.map(({ planned }) => planned));
    const to = meanOf(found.map(({ measured }) => measured));
    let [dot, cross, spread, spreadFound] = [0, 0, 0, 0];
    for (const { planned, measured } of found) {
        const [px, py, mx, my] = [planned.x - from.x, planned.y - from.y, measured.x - to.x, measured.y - to.y];
        dot += px * mx + py * my;
        cross += px * my - py * mx;
        spread += px * px + py * py;
        spreadFound += mx * mx + my * my;
    }
    const least = (tooNear / 2) ** 2;
    if (!(spread > least && spreadFound > least)) return undefined;
    const turn = Math.atan2(cross, dot);
    const turned = lain(from, { turn, x: 0, y: 0 });
    const lie: Lain = { turn, x: to.x - turned.x, y: to.y - turned.y };
    const residuals = found.map(({ planned, measured }) => {
        const at = lain(planned, lie);
        return Math.hypot(at.x - measured.x, at.y - measured.y);
    });
    return { ...lie, scale: Math.sqrt(spreadFound / spread), residuals };
}

/** Where a planned place is on the machine while the blank lies so. */
export function lain({ x, y }: MachinePoint, { turn, x: moveX, y: moveY }: Lain): MachinePoint {
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    return { x: cos * x - sin * y + moveX, y: sin * x + cos * y + moveY };
}

function meanOf(points: readonly MachinePoint[]): MachinePoint {
    const sum = points.reduce((all, { x, y }) => ({ x: all.x + x, y: all.y + y }), { x: 0, y: 0 });
    return { x: sum.x / points.length, y: sum.y / points.length };
}
