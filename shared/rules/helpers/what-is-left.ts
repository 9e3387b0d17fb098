import { islands } from '../../geometry/islands';
import type { Region } from '../../geometry/region';
import { type Column, floorOf } from '../../piece/column';
import { keptFor } from '../../plan/kept';
import type { Plan, StepPlan } from '../../plan/plan';
import { atLeast, exactly, type Interval, subtract } from '../../quantity/interval';
import { edgeOver } from './edge-over';
import { faceAfter } from './face-at';
import { type Wall, wallsOf } from './walls';

/** Wider than this nothing is called a wall, mm. */
const widest = 5;

/** The thinnest wood that a step leaves below what it digs, mm; undefined where it digs nothing, or nothing is known. */
export function floorLeft(plan: Plan, { step, laser, blank }: StepPlan): Interval | undefined {
    const face = faceAfter(plan, step.index, blank);
    if (step.kind !== 'engrave' || laser === undefined || face === undefined) return undefined;
    const floor = thinnestFloor(
        face.cells.flatMap(({ column }) => (column.digs.some((dig) => dig.step === step.index) ? [column] : [])),
    );
    // An outline pass that digs deeper than the rest leaves less along the edge.
    return floor && atLeast(subtract(floor, exactly(edgeOver(laser))), 0);
}

/** The thinnest of the blank's own wood in some places, mm, by the bad end; undefined where it is nowhere left or known. */
export function thinnestFloor(columns: readonly Column[]): Interval | undefined {
    const floors = columns.flatMap((column) => floorOf(column) ?? []);
    return floors.reduce<Interval | undefined>(
        (least, floor) => (least === undefined || floor.low < least.low ? floor : least),
        undefined,
    );
}

/** The thinnest wood beside what each step burns on a blank, by the step's index; only up to 5 mm, and not of veneers. */
export function thinnestWalls(plan: Plan, blank: string): ReadonlyMap<number, Wall> {
    const of = plan.blanks.find(({ name }) => name === blank);
    if (of === undefined) return new Map();
    return keptFor(plan, `walls ${blank}`, () => {
        const thinnest = new Map<number, Wall>();
        for (const wall of wallsOf(plan, of, () => widest)) {
            const { index } = wall.later.step;
            const known = thinnest.get(index);
            if (known === undefined || wall.distance < known.distance) thinnest.set(index, wall);
        }
        return thinnest;
    });
}

/** What a wall stands towards: the name of a step, or the edge. */
export function besideOf({ later, earlier }: Wall): string {
    return earlier === 'edge' ? 'the edge' : earlier === later ? 'itself' : earlier.step.name;
}

/** The parts that are cut free on a blank after a step; none while all hangs together, or where nothing is known. */
export function freedParts(plan: Plan, blank: string, step = plan.steps.length - 1): readonly Region[] {
    const face = faceAfter(plan, step, blank);
    return face?.freed === true ? islands(face.body.region) : [];
}
