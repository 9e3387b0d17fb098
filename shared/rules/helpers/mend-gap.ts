import type { InlayPlan, LaserStep } from '../../plan/plan';
import { showLength } from '../../quantity/show';
import type { Change, Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Inlay } from '../../recipe/step';
import { lengthWithin, type Within } from './length-within';

/** What both halves' written offsets add to the clearance, mm. */
export function offsetsOf({ clearance, gap }: InlayPlan): number {
    return gap - clearance;
}

/** "0.02 mm of clearance", and what offsets add to it. */
export function gapWords(inlay: InlayPlan, step: Inlay): string {
    const offsets = offsetsOf(inlay);
    const clearance = `${showLength(inlay.clearance, step.clearance?.unit)} of clearance`;
    if (offsets === 0) return clearance;
    return `${clearance} and ${showLength(offsets)} of offset`;
}

/**
 * Ways to bring the gap between the halves within bounds: another clearance, or another offset where one is written.
 * @param taken the most that may come off both edges of the veneer's parts together, mm
 */
export function gapFixes(inlay: InlayPlan, step: Inlay, wanted: Within, taken = Number.POSITIVE_INFINITY): Fix[] {
    const { pocket, relief, gap } = inlay;
    const ofRelief = relief.offset?.value ?? 0;
    return [
        ...clearanceFix(step, atMost(less(wanted, offsetsOf(inlay)), taken - 2 * ofRelief)),
        ...offsetFix(pocket, less(wanted, gap - (pocket.offset?.value ?? 0))),
        // An offset of a part that is cut out makes it larger, and the gap narrower.
        ...(relief.kind === 'cut' ? [] : offsetFix(relief, atMost(less(wanted, gap - ofRelief), (taken - inlay.clearance) / 2))),
    ];
}

/** Another clearance within bounds, if there is one. */
export function clearanceFix(step: Inlay, wanted: Within): Fix[] {
    const found = lengthWithin({ ...wanted, low: Math.max(0, wanted.low) }, step.clearance?.unit ?? 'mm');
    if (found === undefined) return [];
    return [{ title: phrase`Give ${found.text} of clearance`, preferred: true, changes: [clearance(step, found.text)] }];
}

/** A lesser or a greater offset reads like a slip of the unit, mm. */
const [leastOffset, mostOffset] = [0.01, 5];

/** Another offset of a half that has one; left out where none is as good. */
export function offsetFix(half: LaserStep, wanted: Within): Fix[] {
    const { offset, offsetWhere } = half;
    if (offset === undefined || offset.value === 0) return [];
    if (offsetWhere !== undefined && wanted.low <= 0 && wanted.high >= 0) {
        return [{ title: phrase`Leave the offset of ${half.name} out`, changes: [{ do: 'remove', where: offsetWhere }] }];
    }
    const found = lengthWithin(wanted, offset.unit);
    if (found === undefined || Math.abs(found.mm) < leastOffset || Math.abs(found.mm) > mostOffset) return [];
    return [
        {
            title: phrase`Give ${half.name} an offset of ${found.text}`,
            changes: [{ do: 'replace', where: offset.where, text: found.text }],
        },
    ];
}

function less({ low, high, best }: Within, by: number): Within {
    return { low: low - by, high: high - by, best: best - by };
}

function atMost({ low, high, best }: Within, most: number): Within {
    return { low, high: Math.min(high, most), best };
}

function clearance(step: Inlay, text: string): Change {
    if (step.clearance !== undefined) return { do: 'replace', where: step.clearance.where, text };
    return { do: 'add', block: step.whole, statement: `clearance ${text}` };
}
