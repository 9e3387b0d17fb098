import { contains } from '../geometry/measure';
import { type Column, type Dig, isGone, type Layer, thicknessAt } from '../piece/column';
import type { Face } from '../piece/face';
import type { Plan } from '../plan/plan';
import { dayOfWork } from '../quantity/calendar';
import { showLength } from '../quantity/show';
import { nameOf } from '../rules/helpers/face-at';
import { wetting } from '../rules/helpers/wetting';

/** Closer to the face than this a surface lies level with it, mm. */
const level = 5e-3;

/**
 * What lies in one place of a blank at a moment of the work, in words, from the top down: "From the top: 0.38 mm maple-06,
 * 0.06 mm bench-glue (holds since day 2), 9.46 mm cherry-10." O(n) in the corners of the face's regions.
 *
 * @param frame as in `plan.faces`: 0 is the start, i + 1 follows step i
 * @param x mm from the blank's left edge; y mm from its top
 * @returns undefined for a blank that has no size
 */
export function columnWords(plan: Plan, frame: number, blank: string, x: number, y: number): string | undefined {
    const face = plan.faces[frame]?.find((one) => one.blank === blank);
    const start = plan.faces[0]?.find((one) => one.blank === blank);
    if (face === undefined || start === undefined || start.unsized === true) return undefined;
    if (!contains(start.body.region, x, y)) return `This lies beside ${blank}.`;
    if (face.unknownSince !== undefined) {
        const step = plan.steps[face.unknownSince]?.title;
        return `Nothing is known here since ${step ?? 'an earlier step'}: its shapes cross too often.`;
    }
    const of = plan.blanks.find(({ name }) => name === blank)?.blank;
    const behind = face.backed && of !== undefined ? `the ${of.backing} behind it` : undefined;
    const bare = behind === undefined ? '' : `; ${behind} lies open`;
    if (!contains(face.body.region, x, y)) return `Nothing is left of ${blank} here: it was cut away${bare}.`;
    const column = columnAt(face, x, y);
    if (isGone(column)) return `It is burnt through here: nothing is left of ${blank}${bare}.`;
    const unit = of?.size?.width.unit;
    const layers = column.layers.map((_, index) => layerWords(plan, frame, column, index, unit));
    if (behind !== undefined) layers.push(behind);
    const height = column.top.value - face.level.value;
    const below =
        Math.abs(height) < level
            ? []
            : [`the surface lies ${showLength(Math.abs(height), unit)} ${height > 0 ? 'below' : 'above'} the face`];
    const dugBy = (dug: readonly Dig[]): string =>
        [...new Set(dug.map(({ step }) => nameOf(plan.steps[step]?.step)))].join(' and ');
    const behindDug = column.below?.digs ?? [];
    const parts = [
        `From the top: ${layers.join(', ')}`,
        ...below,
        ...(column.digs.length === 0 ? [] : [`dug by ${dugBy(column.digs)}`]),
        ...(behindDug.length === 0 ? [] : [`dug from the other face by ${dugBy(behindDug)}`]),
        ...(column.tone === undefined ? [] : [`darkened by ${nameOf(plan.steps[column.tone]?.step)}`]),
    ];
    return `${parts.join('; ')}.`;
}

function columnAt(face: Face, x: number, y: number): Column {
    const cell = face.cells.find(
        ({ region, box }) => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY && contains(region, x, y),
    );
    return cell?.column ?? face.bare;
}

function layerWords(plan: Plan, frame: number, column: Column, index: number, unit: string | undefined): string {
    const layer = column.layers[index]!;
    const since = dryness(plan, frame, layer);
    switch (layer.kind) {
        case 'coat':
            return `${coatsOf(plan, layer)}${layer.name}${since}`;
        case 'tape':
            return 'masking tape';
        case 'foil':
            return `the backing of ${layer.name}`;
        default: {
            const thick = thicknessAt(column, index).value;
            const name = layer.kind === 'air' ? 'of air' : layer.name;
            return `${Number.isFinite(thick) ? `${showLength(thick, unit)} ` : ''}${name}${since}`;
        }
    }
}

function coatsOf(plan: Plan, { step: index }: Layer): string {
    const step = plan.steps[index ?? -1]?.step;
    const coats = step?.kind === 'seal' || step?.kind === 'finish' ? step.coats : 1;
    return coats > 1 ? `${coats} coats of ` : 'a coat of ';
}

/** Since or until which day of the work something is wet; empty where nothing is known of it. */
function dryness(plan: Plan, frame: number, { kind, step }: Layer): string {
    const wet = step === undefined || kind === 'wood' || kind === 'air' ? undefined : wetting(plan, step);
    const laid = plan.schedule.spans.find((span) => span.step === step);
    const now = plan.schedule.spans.find((span) => span.step === frame - 1)?.ready;
    if (wet === undefined || laid === undefined || now === undefined || plan.unknown !== undefined) return '';
    const dry = laid.end + wet.needs;
    const word = kind === 'coat' ? 'dry' : kind === 'glue' ? 'holds' : 'cured';
    const day = dayOfWork(dry);
    if (now >= dry - 1) return ` (${word} since day ${day})`;
    return ` (still wet, ${word} on day ${day} at the earliest)`;
}
