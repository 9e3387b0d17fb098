import { exactly, type Interval, subtract } from '../quantity/interval';
import type { FlipAxis } from '../recipe/step';
import { type Burns, type Column, isGone, type Layer } from './column';
import { type Face, type FaceMarks, startFace } from './face';
import { firstLie, regionAs, turnedLie } from './lie';
import { type Boxed, boxed, type Remembered } from './partition';

/** A blank is turned over. */
export interface Turn {
    readonly do: 'turn';
    readonly axis: FlipAxis;
    readonly sheet: string;
    /** mm; absent where the recipe does not say. */
    readonly size?: { readonly width: number; readonly height: number };
    readonly thickness?: Interval;
}

/** A height below the face that is up, with the same below the other face where it was measured from there: turned back, no spread is counted twice. */
interface Height extends Interval {
    readonly across?: Interval;
}

/**
 * The face that comes up when a blank is turned over. Both sides share one partition: the same cells, mirrored, with their columns
 * read from the other end, so that a burn on one side meets what was dug and laid on the other.
 * Of a blank without a size or a thickness nobody knows what lies below what: each side is then kept by itself.
 */
export function turnedOver(face: Face, { axis, sheet, size, thickness }: Turn, memo: Remembered): Face {
    const from = face.lie ?? firstLie;
    const to = turnedLie(from, axis);
    if (size === undefined || thickness === undefined || face.unsized) return otherFace(face, sheet, to);
    const { covered: _covered, under, ...seen } = face;
    const over = (one: Boxed): Boxed =>
        memo.get('piece-turned', `${memo.keyOf(one.region)} ${axis} ${size.width} ${size.height}`, () => {
            const region = regionAs(one.region, from, to, size);
            return boxed(region) ?? { ...one, region };
        });
    const turned = <Part extends { readonly region: Face['body']['region'] }>(parts: readonly Part[]): Part[] =>
        parts.map((part) => ({
            ...part,
            region: over(boxed(part.region) ?? { region: part.region, box: face.body.box }).region,
        }));
    const isHole = ({ through }: FaceMarks): boolean => through;
    return {
        ...seen,
        lie: to,
        body: over(face.body),
        bare: columnFromBelow(face.bare, thickness),
        cells: face.cells.map((cell) => ({ ...over(cell), column: columnFromBelow(cell.column, thickness) })),
        kerfs: turned(face.kerfs),
        marks: turned([...face.marks.filter(isHole), ...(under?.marks ?? [])]),
        level: under?.level ?? exactly(0),
        sanded: under?.sanded ?? false,
        under: { level: face.level, sanded: face.sanded, marks: turned(face.marks.filter((mark) => !isHole(mark))) },
        met: [],
    };
}

/** Each side by itself. */
function otherFace(face: Face, sheet: string, lie: Face['lie'] & object): Face {
    const { apart, ...now } = face;
    const other = apart ?? startFace({ blank: face.blank, sheet, backed: face.backed });
    return { ...other, body: face.body, lie, apart: now };
}

/** A column as it is from the other face. @param thickness of the blank before any work, mm */
function columnFromBelow(column: Column, thickness: Interval): Column {
    const { top, layers, digs, tone, tonedAt, below } = column;
    const seen: Burns = { digs, ...(tone === undefined ? {} : { tone }), ...(tonedAt === undefined ? {} : { tonedAt }) };
    const hidden: Burns = below ?? { digs: [] };
    if (isGone(column)) return { top, layers, ...hidden, below: seen };
    const turned = layers.map((layer, index): Layer => {
        const upper = index === 0 ? top : layers[index - 1]!.down;
        return { ...layer, down: fromBelow(upper, thickness) };
    });
    return {
        top: fromBelow(layers.at(-1)!.down, thickness),
        layers: turned.reverse(),
        ...hidden,
        below: seen,
    };
}

/** A height below one face as it is below the other. @param thickness of the blank before any work, mm */
export function fromBelow(height: Height, thickness: Interval): Height {
    if (height.across !== undefined) return { ...height.across, across: height };
    const isBack = height.value === thickness.value && height.low === thickness.low && height.high === thickness.high;
    return { ...(isBack ? exactly(0) : subtract(thickness, height)), across: height };
}
