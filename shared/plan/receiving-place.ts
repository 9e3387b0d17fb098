import { intersect } from '../geometry/boolean';
import { area, bounds } from '../geometry/measure';
import { type Column, hair, hollowFloor, ownLayer } from '../piece/column';
import type { Cell, Face } from '../piece/face';
import { boxesMeet } from '../piece/partition';
import { add, exactly, type Interval, subtract } from '../quantity/interval';
import type { Memo } from './memo';
import type { InlayPlan } from './plan';
import type { Hollow } from './plan-fill';

/** Less than this of a floor carries no veneer, and is no place to pour into, mm2. */
const LEAST_FLOOR = 1;

/** The faces before the first step and after each one that is done. */
type Faces = readonly (readonly Face[])[];

/** What a fill of a pocket is poured into now; undefined where the pocket is no hollow, or nothing is known of it. */
export function hollowIn(faces: Faces, blank: string | undefined, pocket: number): Hollow | undefined {
    const face = now(faces, blank);
    if (face === undefined) return undefined;
    const places = cellsOf(face, pocket).map(({ region, column }) => {
        const depth = hollowFloor(column).value - face.level.value;
        return { area: area(region), depth, column };
    });
    const dug = places.filter(({ depth }) => depth > hair);
    const size = dug.reduce((sum, place) => sum + place.area, 0);
    if (!(size > 0)) return undefined;
    const main = dug.reduce((a, b) => (b.area > a.area ? b : a));
    const wide = dug.filter((place) => place.area >= LEAST_FLOOR || place === main);
    return {
        area: size,
        volume: dug.reduce((sum, place) => sum + place.area * place.depth, 0),
        depth: depthBelowFace(main.column, face, faces),
        deepest: Math.max(...wide.map(({ depth }) => depth)),
    };
}

/** The floor that stops a veneer first. */
export interface Seat {
    /** Below the blank's first face, mm. */
    readonly floor: Interval;
    /** Below the face as it is now, mm. */
    readonly depth: Interval;
}

/** Where an inlay comes to lie now; undefined where its pocket is no hollow, or nothing is known of it. */
export function seatIn(faces: Faces, inlay: InlayPlan, memo: Memo): Seat | undefined {
    const face = now(faces, inlay.pocketLaser.blank);
    if (face === undefined) return undefined;
    if (inlay.pocket.kind === 'cut') {
        // What lies in an opening lies on the bench, as the board around it does.
        const floor = face.bare.layers[ownLayer(face.bare)]?.down;
        return floor === undefined || !Number.isFinite(floor.value) ? undefined : { floor, depth: subtract(floor, face.level) };
    }
    const [first] = cellsCarrying(face, inlay, memo).toSorted((a, b) => a.column.top.value - b.column.top.value);
    return first === undefined ? undefined : { floor: first.column.top, depth: depthBelowFace(first.column, face, faces) };
}

/** The cells of an inlay's pocket on which its veneer can lie. */
export function cellsCarrying(face: Face, inlay: InlayPlan, memo: Memo): Cell[] {
    const dug = cellsOf(face, inlay.pocket.index);
    return dug.length < 2 ? dug : under(dug, inlay, memo);
}

/** The same with what its burn has left standing there, such as resin. */
export function cellsUnder(face: Face, inlay: InlayPlan, memo: Memo): Cell[] {
    return under(
        face.cells.filter(({ column }) => column.layers.length > 0),
        inlay,
        memo,
    );
}

function under(cells: readonly Cell[], { fits }: InlayPlan, memo: Memo): Cell[] {
    const box = bounds(fits);
    if (box === undefined) return [];
    return cells.filter((cell) => {
        if (!boxesMeet(cell.box, box)) return false;
        const key = `${memo.keyOf(cell.region)} ${memo.keyOf(fits)}`;
        return memo.get('lies-under', key, () => area(intersect(cell.region, fits))) >= LEAST_FLOOR;
    });
}

function now(faces: Faces, blank: string | undefined): Face | undefined {
    const face = faces[faces.length - 1]?.find((one) => one.blank === blank);
    return face?.unknownSince === undefined ? face : undefined;
}

function cellsOf(face: Face, pocket: number): Cell[] {
    return face.cells.filter(
        ({ column }) => column.layers.length > 0 && column.digs.some(({ step, depth }) => step === pocket && depth.value > hair),
    );
}

/**
 * From the face as it is now down to what was dug. What is uncertain of the face that a burn began at is in the height of its
 * floor too and does not count; what sanding took since then does.
 */
function depthBelowFace(column: Column, face: Face, faces: Faces): Interval {
    const floor = hollowFloor(column);
    const dug = column.digs.filter(({ depth }) => depth.value > hair);
    const began = faces[dug[0]?.step ?? -1]?.find(({ blank }) => blank === face.blank)?.level;
    if (began === undefined) return subtract(floor, face.level);
    const depth = dug.reduce((sum, one) => add(sum, one.depth), exactly(0));
    const sunk = { value: face.level.value - began.value, low: face.level.low - began.low, high: face.level.high - began.high };
    const made = subtract(depth, sunk);
    // Something else than burns and sandings has been at work here.
    return Math.abs(made.value - (floor.value - face.level.value)) > 1e-6 ? subtract(floor, face.level) : made;
}
