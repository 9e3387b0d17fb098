import type { Region } from '../geometry/region';
import { add, exactly, type Interval, subtract } from '../quantity/interval';
import { type Column, columnKey, hair, hollowedFromBelow, isGone, type Layer, layOn } from './column';
import type { Cell, Face } from './face';
import { type Boxed, boxed, boxesMeet, halve, type Remembered, unite } from './partition';

/** A veneer or a part that is laid into a pocket or an opening. */
export interface Lay {
    readonly do: 'lay';
    readonly step: number;
    readonly pocket: number;
    readonly region: Region;
    /** The floor that carries it, mm below the first face; where the floor is deeper it hangs over a hollow. */
    readonly floor: Interval;
    readonly sheet: string;
    readonly veneer: Interval;
    readonly glue: string;
    readonly film: Interval;
    /** It goes into a hole, with glue on its edge alone. */
    readonly opening?: true;
    /** The blank whose backing comes with it and lies on top. */
    readonly foil?: string;
}

/** What had been burnt into a part before it was laid. */
export interface Undercut {
    readonly do: 'undercut';
    /** The step that has laid it. */
    readonly step: number;
    /** Where its side that went down had been burnt, and how deep, mm. */
    readonly region: Region;
    readonly more: number;
    /** It lies face up: what was burnt into it is seen. */
    readonly above?: true;
}

/** The face with a veneer or part laid in. */
export function laid(face: Face, lay: Lay, memo: Remembered): Face {
    const whole = boxed(lay.region);
    if (whole === undefined) return face;
    if (lay.opening) return laidInHole(face, whole, lay, memo);
    const cells = face.cells.flatMap((cell): Cell[] => {
        if (!cell.column.digs.some(({ step }) => step === lay.pocket) || !boxesMeet(cell.box, whole.box)) return [cell];
        const { inside, outside } = halve(cell.region, lay.region, memo);
        const inner = boxed(inside);
        if (inner === undefined) return [cell];
        const outer = boxed(outside);
        const rest = outer === undefined ? [] : [{ ...outer, column: cell.column }];
        return [...rest, { ...inner, column: withVeneer(cell.column, lay) }];
    });
    return { ...face, cells: united(cells, face.bare, memo) };
}

/** A part where nothing was left: it belongs to the body from now on. */
function laidInHole(face: Face, whole: Boxed, { step, floor, sheet, veneer }: Lay, memo: Remembered): Face {
    const part = boxed(halve(whole.region, face.body.region, memo).outside);
    if (part === undefined) return face;
    const column: Column = {
        top: subtract(floor, veneer),
        layers: [{ kind: 'wood', name: sheet, down: floor, step }],
        digs: [],
    };
    const body = unite([face.body, part], memo);
    return { ...face, body, cells: united([...face.cells, { ...part, column }], face.bare, memo) };
}

function withVeneer(column: Column, { step, floor, glue, film, sheet, veneer, foil }: Lay): Column {
    const hollow: Layer = { kind: 'air', name: 'hollow', down: column.top, step };
    const bridged =
        isGone(column) || column.top.value <= floor.value + hair
            ? column
            : { ...column, top: floor, layers: [hollow, ...column.layers] };
    const glued = layOn(bridged, { kind: 'glue', name: glue, step }, film);
    const veneered = layOn(glued, { kind: 'wood', name: sheet, step }, veneer);
    return foil === undefined ? veneered : layOn(veneered, { kind: 'foil', name: foil, step }, exactly(0));
}

/** A part that has just been laid is lower where its face was engraved. */
function hollowed(column: Column, deep: number): Column {
    return { ...column, top: add(column.top, exactly(deep)) };
}

/** A veneer that has just been laid hangs over hollows where it was burnt from below. */
export function undercut(face: Face, { step, region, more, above }: Undercut, memo: Remembered): Face {
    const whole = boxed(region);
    if (whole === undefined) return face;
    const cells = face.cells.flatMap((cell): Cell[] => {
        const at = cell.column.layers.findIndex((layer) => layer.kind === 'wood' && layer.step === step);
        if (at < 0 || !boxesMeet(cell.box, whole.box)) return [cell];
        const { inside, outside } = halve(cell.region, region, memo);
        const inner = boxed(inside);
        if (inner === undefined) return [cell];
        const outer = boxed(outside);
        const rest = outer === undefined ? [] : [{ ...outer, column: cell.column }];
        return [...rest, { ...inner, column: above ? hollowed(cell.column, more) : hollowedFromBelow(cell.column, at, more) }];
    });
    return { ...face, cells: united(cells, face.bare, memo) };
}

/** Cells with equal columns are one, and what is like the bare face is no cell. */
export function united(cells: readonly Cell[], bare: Column, memo: Remembered): Cell[] {
    const plain = columnKey(bare);
    const alike = new Map<string, Cell[]>();
    for (const cell of cells) {
        const key = columnKey(cell.column);
        if (key === plain) continue;
        const known = alike.get(key);
        if (known === undefined) alike.set(key, [cell]);
        else known.push(cell);
    }
    return [...alike.values()].map((same) => (same.length === 1 ? same[0]! : { ...unite(same, memo), column: same[0]!.column }));
}
