import { area } from '../geometry/measure';
import type { Region } from '../geometry/region';
import { widen } from '../geometry/widen';
import { type Column, isGone } from '../piece/column';
import type { Face } from '../piece/face';
import { type Boxed, boxed, boxesMeet, halve, type Remembered, remainder } from '../piece/partition';

/** A part of a face in which the same lies everywhere, the bare one too. */
export interface Patch extends Boxed {
    readonly column: Column;
}

/**
 * A face as disjoint patches that make up all that is left of it: its cells and the bare rest, without the slots of cuts and without holes of marks.
 * Where it is burnt through, a patch without layers shows what it is stuck to; without a backing there is none.
 * @throws TooTangled
 */
export function patchesOf(face: Face, memo: Remembered): Patch[] {
    const { cells, bare, body, backed } = face;
    const expected = cells.reduce((left, { region }) => left - area(region), area(body.region));
    const rest = expected > leastArea ? boxed(remainder(body.region, cells, expected, memo)) : undefined;
    const patches: Patch[] = [...cells, ...(rest === undefined ? [] : [{ ...rest, column: bare }])];
    const open = holesOf(face).reduce((left, hole) => left.flatMap((patch) => without(patch, hole, memo)), patches);
    return backed ? open : open.filter(({ column }) => !isGone(column));
}

/** mm2: less is what is left over where corners were rounded to the grid. */
const leastArea = 1e-3;

function holesOf({ kerfs, marks }: Face): Boxed[] {
    const slots = kerfs.map(({ region, width }) =>
        widen(
            region.rings.map((points) => ({ points, closed: true })),
            { width, cap: 'butt', join: 'round', miterLimit: 4 },
        ),
    );
    const holes: Region[] = [...slots, ...marks.filter(({ through }) => through).map(({ region }) => region)];
    return holes.flatMap((region) => boxed(region) ?? []);
}

function without(patch: Patch, hole: Boxed, memo: Remembered): Patch[] {
    if (!boxesMeet(patch.box, hole.box)) return [patch];
    const left = boxed(halve(patch.region, hole.region, memo).outside);
    return left === undefined ? [] : [{ ...left, column: patch.column }];
}
