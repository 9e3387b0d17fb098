import { area } from '../geometry/measure';
import type { Region } from '../geometry/region';
import { rectangle } from '../geometry/shapes';
import { exactly, type Interval } from '../quantity/interval';
import { bareColumn, type Column, type Layer, layersAbove, thicknessAt } from './column';
import type { Lie } from './lie';
import type { Boxed, Covered } from './partition';

/** A region of a face in which the same lies everywhere. */
export interface Cell extends Boxed {
    readonly column: Column;
}

/** What a beam came upon in a part of where it went. */
export interface Met extends Boxed {
    /** As it was before the beam came. */
    readonly column: Column;
    /** Layers that are not wood and that the beam touched. */
    readonly layers: readonly Layer[];
    /** mm2; of a cut, what its kerf takes. */
    readonly area: number;
    /** Of a cut, how much of its line runs here, mm. */
    readonly length?: number;
}

/** The line of a cut, which parts what it runs through without taking it away. */
export interface Kerf {
    readonly step: number;
    /** What it encloses. */
    readonly region: Region;
    /** mm. */
    readonly width: number;
}

/** Registration marks of an inlay: holes in the veneer, or only a light colour on the board. */
export interface FaceMarks {
    readonly step: number;
    readonly region: Region;
    readonly through: boolean;
    /** The face that they were burnt into, mm below the first one. */
    readonly level: Interval;
}

/** The face of a blank that is up at a moment of the work: disjoint cells, and one column everywhere else in the body. Lengths mm. */
export interface Face {
    readonly blank: string;
    /** How it lies on the bed; absent where it was never turned over. */
    readonly lie?: Lie;
    /** What is only true of the face that is down: how far it was sanded, and marks on it. */
    readonly under?: Pick<Face, 'level' | 'sanded' | 'marks'>;
    /** The other face, where nobody knows what lies below what: its blank has no size or no thickness. */
    readonly apart?: Face;
    /** The recipe does not say how large it is: its body has no end. */
    readonly unsized?: true;
    /** What is still there of the blank, seen on its face: without what fell out, and without the waste once the parts are free. */
    readonly body: Boxed;
    /** Parts have been freed: the body is theirs. */
    readonly freed: boolean;
    /** How far the face has come down by sanding. */
    readonly level: Interval;
    readonly bare: Column;
    readonly cells: readonly Cell[];
    /** All cells as one, while burns alone have made them. */
    readonly covered?: Covered;
    readonly kerfs: readonly Kerf[];
    readonly marks: readonly FaceMarks[];
    /** What it is stuck to is still behind it. */
    readonly backed: boolean;
    readonly sanded: boolean;
    /** Glued face down into another blank: its name. */
    readonly inside?: string;
    /** What the beam of the step just done came upon; none after other steps. */
    readonly met: readonly Met[];
    /** What fell out of the blank in the step just done, or will once it is off what it is stuck to. */
    readonly fell?: Region;
    /** Step whose shapes cross too often for anything to be known after it. */
    readonly unknownSince?: number;
}

/** Half the side of a blank without a size, mm: larger than anything that is engraved, and well within the polygon grid. */
const ENDLESS = 1e4;

/** What a face begins as; lengths mm. */
export interface Untouched {
    readonly blank: string;
    /** Absent where the recipe does not say. */
    readonly size?: { readonly width: number; readonly height: number };
    readonly sheet: string;
    readonly thickness?: Interval;
    readonly backed?: boolean;
}

export function startFace({ blank, size, sheet, thickness, backed = false }: Untouched): Face {
    const box =
        size === undefined
            ? { minX: -ENDLESS, minY: -ENDLESS, maxX: ENDLESS, maxY: ENDLESS }
            : { minX: 0, minY: 0, maxX: size.width, maxY: size.height };
    return {
        blank,
        ...(size === undefined ? { unsized: true } : {}),
        body: { region: rectangle(box.minX, box.minY, box.maxX - box.minX, box.maxY - box.minY), box },
        freed: false,
        level: exactly(0),
        bare: bareColumn(sheet, thickness),
        cells: [],
        kerfs: [],
        marks: [],
        backed,
        sanded: false,
        met: [],
    };
}

/** Tape lies on its face. */
export function isMasked({ bare }: Face): boolean {
    return layersAbove(bare).some(({ kind }) => kind === 'tape');
}

/** The face without what belonged to the step that was just done. */
export function settledFace(face: Face): Face {
    if (face.met.length === 0 && face.fell === undefined) return face;
    const { fell: _fell, ...rest } = face;
    return { ...rest, met: [] };
}

/** Area of a face that is like the bare one, mm2. */
export function bareArea({ body, cells }: Face): number {
    return cells.reduce((left, { region }) => left - area(region), area(body.region));
}

/** Volume of each material on a face, mm3, by `kind name`; of a blank without a thickness its own wood is left out. */
export function volumes(face: Face): ReadonlyMap<string, number> {
    const sums = new Map<string, number>();
    const count = (column: Column, size: number): void => {
        for (const [index, { kind, name, down }] of column.layers.entries()) {
            if (!Number.isFinite(down.value) || kind === 'air') continue;
            const key = `${kind} ${name}`;
            sums.set(key, (sums.get(key) ?? 0) + size * thicknessAt(column, index).value);
        }
    };
    for (const { region, column } of face.cells) count(column, area(region));
    count(face.bare, bareArea(face));
    return sums;
}
