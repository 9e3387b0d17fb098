import { area } from '../geometry/measure';
import type { Interval } from '../quantity/interval';
import { type Column, type Layer, thicknessAt } from './column';
import type { Face, Met } from './face';
import { boxesMeet } from './partition';

/** How a burn that has just been done lies to the glue below a veneer that it was burnt into; mm. */
export interface NearGlue {
    readonly met: Met;
    readonly veneer: Layer;
    readonly glue: Layer;
    /** How far its floor lies in the wood below the glue. */
    readonly beyond: number;
    /** How far off this is expected to be: what is uncertain of the burn and of the layers, as a root of squares. */
    readonly unsure: number;
}

/** So far in the wood below a glue line nobody asks how sure a depth is, mm. @commonPractice */
export const clearOfGlue = 0.1;

/** Of a likely range of two standard deviations either way: more often than one time in six it ends in the glue. */
const oneInSix = 0.5;

/** Where a burn just done ends so little below a glue line that it may well end in it; what surely does is in the cells themselves. */
export function mayEndInGlue(face: Face, step: number, depth: Interval): NearGlue[] {
    return face.met.flatMap((met) => {
        const near = nearGlue(face, met, step, depth);
        return near !== undefined && near.beyond < Math.min(clearOfGlue, oneInSix * near.unsure) ? [near] : [];
    });
}

/** Undefined where there is no veneer on glue, and where the floor does not lie below both. */
function nearGlue(face: Face, met: Met, step: number, depth: Interval): NearGlue | undefined {
    const { column } = met;
    const at = column.layers.findIndex(({ kind }) => kind === 'glue');
    const [veneer, glue] = [column.layers[at - 1], column.layers[at]];
    if (glue === undefined || veneer?.kind !== 'wood' || veneer.step === undefined || !(depth.value > 0)) return undefined;
    // A seam beside the veneer may have been dug alike: what this part became is at least as large as it.
    const after = face.cells.find(
        ({ box, region, column: now }) =>
            boxesMeet(box, met.box) && isLeftOf(now, column, step) && area(region) > 0.99 * met.area,
    )?.column;
    if (after === undefined) return undefined;
    const beyond = after.top.value - glue.down.value;
    if (beyond < 0) return undefined;
    const dug = after.digs[after.digs.length - 1]!.depth.value;
    const burn = (dug * Math.max(depth.high - depth.value, depth.value - depth.low)) / depth.value;
    const own = thicknessAt(column, at - 1);
    return { met, veneer, glue, beyond, unsure: Math.hypot(burn, Math.max(own.high - own.value, own.value - own.low)) };
}

/** Whether a column is what a burn has left of another. */
function isLeftOf(after: Column, before: Column, step: number): boolean {
    const { digs, layers } = after;
    const skipped = before.layers.length - layers.length;
    return (
        skipped >= 0 &&
        layers.length > 0 &&
        digs.length === before.digs.length + 1 &&
        digs[digs.length - 1]!.step === step &&
        before.digs.every((dig, i) => dig.step === digs[i]!.step) &&
        layers.every((layer, i) => {
            const other = before.layers[i + skipped]!;
            return layer.kind === other.kind && layer.step === other.step && layer.down.value === other.down.value;
        })
    );
}
