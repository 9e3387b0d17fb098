import { showLength } from '../quantity/show';
import type { Fix } from '../recipe/finding';
import type { Sand } from '../recipe/step';
import { roundLength } from './ask-depth';
import { leastTaken } from './leaves-scorch';

/** Takes so much less off the face, as long as enough comes off for the scorch to go. */
export function sandLess({ take }: Sand, byMm: number): Fix[] {
    if (take === undefined) return [];
    const less = roundLength(take.value - byMm, take.unit, 'down');
    if (less < leastTaken) return [];
    const text = showLength(less, take.unit);
    return [{ title: `Take only ${text} off the face`, changes: [{ do: 'replace', where: take.where, text }] }];
}
