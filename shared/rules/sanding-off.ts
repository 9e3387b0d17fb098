import { showLength } from '../quantity/show';
import type { Fix } from '../recipe/finding';
import type { Sand } from '../recipe/step';
import { roundLength } from './ask-depth';

/** What has to come off a face for scorch and smoke to go, mm: common practice, no source. */
export const leastTaken = 0.05;

/** Takes so much less off the face, as long as enough comes off for the scorch to go. */
export function sandLess({ take }: Sand, byMm: number): Fix[] {
    if (take === undefined) return [];
    const less = roundLength(take.value - byMm, take.unit, 'down');
    if (less < leastTaken) return [];
    const text = showLength(less, take.unit);
    return [{ title: `Take only ${text} off the face`, changes: [{ do: 'replace', where: take.where, text }] }];
}

/** Takes a tenth of a millimetre off the face: enough for scorch and for registration marks. */
export function takeATenth({ take, flushWhere }: Sand): Fix[] {
    const where = take?.where ?? flushWhere;
    if (where === undefined) return [];
    const text = take === undefined ? 'flush then 0.1 mm' : '0.1 mm';
    return [{ title: 'Take 0.1 mm off the face', changes: [{ do: 'replace', where, text }] }];
}
