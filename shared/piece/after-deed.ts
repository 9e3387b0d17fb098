import { area, perimeter } from '../geometry/measure';
import { grow } from '../geometry/offset';
import { emptyRegion, type Region, tangledRegion } from '../geometry/region';
import { add, exactly, type Interval } from '../quantity/interval';
import {
    type Burn,
    burnColumn,
    type Column,
    hair,
    hollowFloor,
    isGone,
    type Layer,
    layOn,
    maskColumn,
    peelColumn,
    sandColumn,
    scorchDepth,
} from './column';
import { type Cell, type Face, type Met, settledFace } from './face';
import { type Lay, laid, type Undercut, undercut, united } from './lay';
import { addedTo, type Boxed, boxed, boxesMeet, halve, type Remembered, remainder, TooTangled } from './partition';
import { type Turn, turnedOver } from './turned-over';

/** What a step does to a face. Regions in the blank's coordinates, mm. */
export type Deed =
    | ({ readonly do: 'burn'; readonly region: Region } & Burn)
    | {
          readonly do: 'cut';
          readonly step: number;
          /** What the cut encloses. */
          readonly region: Region;
          /** What the beam's way encloses, beside the drawn edge; and the width of what it takes along it. */
          readonly line: Region;
          readonly kerf: number;
          /** What falls out. */
          readonly holes: Region;
          /** It keeps its place for now: the blank is stuck to something. */
          readonly held?: true;
          /** How deep the groove is that is left where the beam does not come through, mm; nothing comes loose then. */
          readonly depths?: Readonly<Record<string, Interval>>;
          /** What stays once the rest falls away; absent while it hangs together. */
          readonly keeps?: Region;
      }
    | { readonly do: 'free'; readonly keeps?: Region; readonly holes?: Region }
    | {
          readonly do: 'fill';
          readonly step: number;
          readonly pocket: number;
          readonly resin: string;
          readonly metal: boolean;
          /** Part of the room left up to the face that it fills. */
          readonly share: number;
          /** What stands above that, as a part of the whole hollow's depth. */
          readonly over: number;
      }
    | Lay
    | Undercut
    | { readonly do: 'join'; readonly into: string }
    | { readonly do: 'mark'; readonly step: number; readonly region: Region; readonly through: boolean }
    | { readonly do: 'sand'; readonly below: Interval; readonly flush: boolean }
    | { readonly do: 'coat'; readonly step: number; readonly name: string }
    | Turn
    | { readonly do: 'mask'; readonly step: number }
    | { readonly do: 'peel'; readonly blank: string };

/**
 * The face after a deed. Pure; `memo` only saves work. Costs no geometry where the deed meets nothing that an earlier one left.
 * Never throws for shapes that are too tangled: the face then says since when nothing is known.
 */
export function afterDeed(face: Face, deed: Deed, memo: Remembered): Face {
    const settled = settledFace(face);
    if (settled.unknownSince !== undefined) return settled;
    try {
        const next = done(settled, deed, memo);
        return deed.do === 'burn' || haveSameRegions(next, settled) ? next : uncovered(next);
    } catch (problem) {
        if (!(problem instanceof TooTangled)) throw problem;
        return { ...settled, unknownSince: 'step' in deed ? deed.step : 0 };
    }
}

function done(face: Face, deed: Deed, memo: Remembered): Face {
    switch (deed.do) {
        case 'burn':
            return burnt(face, deed, memo);
        case 'cut':
            return cut(face, deed, memo);
        case 'free':
            return freed(face, deed, memo);
        case 'fill':
            return withColumns(face, (column) => filled(column, face.level, deed), memo);
        case 'lay':
            return laid(face, deed, memo);
        case 'undercut':
            return undercut(face, deed, memo);
        case 'join':
            return { ...face, inside: deed.into };
        case 'mark': {
            const { step, region, through } = deed;
            return { ...face, marks: [...face.marks, { step, region, through, level: face.level }] };
        }
        case 'sand': {
            const level = add(face.level, deed.below);
            const marks = face.marks.filter((mark) => mark.through || mark.level.value + scorchDepth > level.value + hair);
            const sanded = { ...face, level, marks, sanded: true };
            if (!deed.flush && deed.below.value <= hair) return withColumns(sanded, unmasked, memo);
            return withColumns(sanded, (column) => sandColumn(unmasked(column), level), memo);
        }
        case 'coat':
            return withColumns(
                face,
                (column) => layOn(column, { kind: 'coat', name: deed.name, step: deed.step }, exactly(0)),
                memo,
            );
        case 'turn':
            return turnedOver(face, deed, memo);
        case 'mask':
            return withColumns(face, (column) => maskColumn(column, face.level, deed.step), memo);
        case 'peel': {
            const own = face.blank === deed.blank;
            return withColumns(
                own ? { ...face, backed: false } : face,
                (column) =>
                    peelColumn(column, ({ kind, name }) => (kind === 'foil' ? name === deed.blank : own && kind === 'tape')),
                memo,
            );
        }
    }
}

function unmasked(column: Column): Column {
    return peelColumn(column, ({ kind }) => kind === 'tape');
}

function burnt(face: Face, burn: Extract<Deed, { do: 'burn' }>, memo: Remembered): Face {
    const whole = boxed(within(burn.region, face.body, memo));
    if (whole === undefined) return face;
    const cells: Cell[] = [];
    const met: Met[] = [];
    const strike = (part: Boxed, column: Column): void => {
        const struck = burnColumn(column, burn);
        cells.push({ ...part, column: struck.column });
        met.push({ ...part, column, layers: struck.met, area: area(part.region) });
    };
    const taken: Boxed[] = [];
    let left = area(whole.region);
    for (const cell of face.cells) {
        if (!boxesMeet(cell.box, whole.box)) {
            cells.push(cell);
            continue;
        }
        const { inside, outside } = halve(cell.region, whole.region, memo);
        const inner = boxed(inside);
        if (inner === undefined) {
            cells.push(cell);
            continue;
        }
        const outer = boxed(outside);
        if (outer !== undefined) cells.push({ ...outer, column: cell.column });
        strike(inner, cell.column);
        taken.push(cell);
        left -= area(inside);
    }
    const known = face.cells.length === 0 ? [] : face.covered;
    const added = known && addedTo(known, whole, left, memo);
    const rest = boxed(added?.more ?? remainder(whole.region, taken, left, memo));
    if (rest !== undefined) strike(rest, face.bare);
    return { ...uncovered(face), ...(added && { covered: added.covered }), cells: united(cells, face.bare, memo), met };
}

function haveSameRegions({ cells }: Face, before: Face): boolean {
    return cells.length === before.cells.length && cells.every(({ region }, i) => region === before.cells[i]!.region);
}

function uncovered(face: Face): Face {
    const { covered: _covered, ...rest } = face;
    return rest;
}

/** What of a region lies in the body: all of it, mostly, and then it stays the same object. */
function within(region: Region, body: Boxed, memo: Remembered): Region {
    const whole = boxed(region);
    if (whole === undefined) return region;
    const { box } = whole;
    const clear =
        box.minX >= body.box.minX && box.minY >= body.box.minY && box.maxX <= body.box.maxX && box.maxY <= body.box.maxY;
    return clear && isBox(body) ? region : halve(region, body.region, memo).inside;
}

/** The body is the plain rectangle of its box. */
function isBox({ region, box }: Boxed): boolean {
    return (
        region.rings.length === 1 &&
        region.rings[0]!.length === 8 &&
        Math.abs(area(region) - (box.maxX - box.minX) * (box.maxY - box.minY)) < 1e-6
    );
}

function cut(face: Face, deed: Extract<Deed, { do: 'cut' }>, memo: Remembered): Face {
    const met = kerfMet(face, deed, memo);
    if (deed.depths !== undefined) return { ...grooved(face, deed, deed.depths, memo), met };
    const left = deed.held === true ? face : freed(face, deed, memo);
    const kerfs = [...face.kerfs, { step: deed.step, region: deed.line, width: deed.kerf }];
    return { ...left, kerfs, met, ...(deed.holes.rings.length === 0 ? {} : { fell: deed.holes }) };
}

/** The waste falls away from what is kept, and holes out of it. */
function freed(face: Face, { keeps, holes }: { readonly keeps?: Region; readonly holes?: Region }, memo: Remembered): Face {
    const holed = holes === undefined ? face : without(face, holes, memo);
    return keeps === undefined ? holed : keeping(holed, keeps, memo);
}

/** The face with a groove along a cut that does not come through. */
function grooved(face: Face, cut: Extract<Deed, { do: 'cut' }>, depths: Burn['depths'], memo: Remembered): Face {
    if (!(cut.kerf > 0)) return face;
    const region = kerfBand(cut.line, cut.kerf, memo);
    return burnt(face, { do: 'burn', step: cut.step, region, depths, through: false, toneOnly: false, foilStops: true }, memo);
}

/** What a beam takes along a line. @throws TooTangled */
function kerfBand(region: Region, kerf: number, memo: Remembered): Region {
    return memo.get('piece-kerf', `${memo.keyOf(region)} ${kerf}`, () => {
        const wide = grow(region, kerf / 2);
        const narrow = grow(region, -kerf / 2);
        if (wide === tangledRegion || narrow === tangledRegion) throw new TooTangled();
        return halve(wide, narrow, memo).outside;
    });
}

/** What the beam comes upon along a cut, where that is more than bare wood. */
function kerfMet(face: Face, { region, kerf, step }: Extract<Deed, { do: 'cut' }>, memo: Remembered): Met[] {
    const line = boxed(region);
    if (line === undefined || !(kerf > 0)) return [];
    const near = face.cells.filter((cell) => boxesMeet(cell.box, line.box, kerf) && !isGone(cell.column));
    if (near.length === 0 && face.bare.layers.length <= 1) return [];
    const band = kerfBand(region, kerf, memo);
    const through: Burn = { step, depths: {}, through: true, toneOnly: false, foilStops: false };
    const coated = face.bare.layers[0]?.kind === 'wood' ? [] : metByCut(face.bare, through);
    const length = perimeter(region);
    const along: Met[] = coated.length === 0 ? [] : [{ ...line, column: face.bare, layers: coated, area: length * kerf, length }];
    return along.concat(
        near.flatMap(({ region: there, column }) => {
            const inside = boxed(halve(there, band, memo).inside);
            if (inside === undefined) return [];
            const size = area(inside.region);
            return size < kerf * kerf
                ? []
                : [{ ...inside, column, layers: metByCut(column, through), area: size, length: size / kerf }];
        }),
    );
}

/** A cut goes for everything; what holds its beam up is met as well as what lies above. */
function metByCut(column: Column, burn: Burn): readonly Layer[] {
    const { met } = burnColumn(column, burn);
    const held = column.layers.findIndex(({ kind }) => kind === 'resin');
    return held < 0 ? met : [...new Set([...met, column.layers[held]!])];
}

function without(face: Face, holes: Region, memo: Remembered): Face {
    const out = boxed(holes);
    if (out === undefined) return face;
    const body = boxed(halve(face.body.region, holes, memo).outside) ?? { region: emptyRegion, box: out.box };
    const cells = face.cells.flatMap((cell) => {
        if (!boxesMeet(cell.box, out.box)) return [cell];
        const { inside, outside } = halve(cell.region, holes, memo);
        if (inside.rings.length === 0) return [cell];
        const left = boxed(outside);
        return left === undefined ? [] : [{ ...left, column: cell.column }];
    });
    return { ...face, body, cells };
}

function keeping(face: Face, keeps: Region, memo: Remembered): Face {
    const body = boxed(halve(face.body.region, keeps, memo).inside);
    if (body === undefined) return face;
    const cells = face.cells.flatMap((cell) => {
        if (!boxesMeet(cell.box, body.box)) return [];
        const { inside, outside } = halve(cell.region, keeps, memo);
        if (outside.rings.length === 0) return [cell];
        const left = boxed(inside);
        return left === undefined ? [] : [{ ...left, column: cell.column }];
    });
    return { ...face, body, cells, freed: true };
}

function filled(column: Column, level: Interval, fill: Extract<Deed, { do: 'fill' }>): Column {
    if (!column.digs.some(({ step }) => step === fill.pocket)) return column;
    const room = column.top.value - level.value;
    if (!(room > hair) || isGone(column)) return column;
    const layer: Layer = {
        kind: 'resin',
        name: fill.resin,
        step: fill.step,
        down: column.top,
        ...(fill.metal ? { metal: true } : {}),
    };
    const { tone: _tone, tonedAt: _tonedAt, ...rest } = column;
    // Its top is where it is poured to, whatever is uncertain of the floor below.
    const height = fill.share * room + fill.over * (hollowFloor(column).value - level.value);
    return { ...rest, top: exactly(column.top.value - height), layers: [layer, ...column.layers] };
}

/** The face with each column changed; regions stay, but for those that have become equal. */
function withColumns(face: Face, change: (column: Column) => Column, memo: Remembered): Face {
    const bare = change(face.bare);
    const cells = face.cells.map((cell) => {
        const column = change(cell.column);
        return column === cell.column ? cell : { ...cell, column };
    });
    return { ...face, bare, cells: united(cells, bare, memo) };
}
