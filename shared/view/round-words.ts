import { area } from '../geometry/measure';
import { isGone, seenLayer } from '../piece/column';
import type { Face } from '../piece/face';
import type { BlankPlan, Plan } from '../plan/plan';
import { showArea, showLength } from '../quantity/show';
import { nameOf } from '../rules/helpers/face-at';
import type { Patch } from './round-patches';

/** Closer to the face than this a surface lies level with it, mm. */
const level = 5e-3;
/** More than these are told by their number. */
const most = 6;

/**
 * What is seen of a piece in the round, in words: its size, then what lies open, the largest first, with area and height:
 * "walnut-12, 300 × 200 × 12 mm. bare wood, 512 cm², level with the face; floor of pocket, 12.3 cm², 0.50 mm below the face."
 */
export function roundWords(plan: Plan, face: Face, blank: BlankPlan, patches: readonly Patch[]): string {
    const unit = blank.blank.size?.width.unit;
    const sizes = [blank.size?.width, blank.size?.height, blank.thickness?.value].flatMap((mm) => (mm === undefined ? [] : mm));
    const seen = new Map<string, number>();
    for (const { region, column } of patches) {
        const what = isGone(column)
            ? 'open backing'
            : `${whatLies(plan, face, column)}, AREA, ${heightWords(column.top.value - face.level.value, unit)}`;
        seen.set(what, (seen.get(what) ?? 0) + area(region));
    }
    const sorted = [...seen].sort(([, a], [, b]) => b - a).map(([what, size]) => what.replace('AREA', showArea(size)));
    const more = sorted.length > most ? [`and ${sorted.length - most} more kinds of places`] : [];
    const [first = '', ...rest] = sizes.map((mm) => showLength(mm, unit));
    return `${blank.blank.sheet?.name ?? blank.name}, ${[first, ...rest].join(' × ')}. ${[...sorted.slice(0, most), ...more].join('; ')}.`;
}

function whatLies(plan: Plan, face: Face, column: Patch['column']): string {
    if (column.layers[0]?.kind === 'tape') return 'tape';
    const layer = seenLayer(column);
    const dig = column.digs.at(-1);
    if (layer === undefined) return 'nothing';
    if (layer.kind === 'wood' && dig !== undefined && dig.step > (layer.step ?? -1))
        return `floor of ${nameOf(plan.steps[dig.step]?.step)}`;
    if (column.tone !== undefined) return `colour of ${nameOf(plan.steps[column.tone]?.step)}`;
    if (layer.kind === 'wood' && layer.step === undefined) return face.bare === column ? 'bare wood' : 'wood';
    return layer.name;
}

function heightWords(below: number, unit: string | undefined): string {
    if (Math.abs(below) < level) return 'level with the face';
    return `${showLength(Math.abs(below), unit)} ${below > 0 ? 'below' : 'above'} the face`;
}
