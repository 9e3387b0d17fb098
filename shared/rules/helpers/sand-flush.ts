import type { Plan } from '../../plan/plan';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import { cureOf } from '../order/sand-before-cure';
import type { Content } from './contents';
import { elapsed, longEnough } from './elapsed';
import { faceAtEnd } from './face-at';
import { timeText } from './longer-wait';
import { statementBefore } from './statement-before';

/** Grits that take the spill off and leave a face for a finish. @commonPractice */
const grits = 'grits 120, 180, 240';

/**
 * Brings what stands proud of a blank level with its face, in a sanding that comes after all of it, or else in one
 * more, cured and peeled, before the first finish. Flush alone: what else comes off the face is the maker's choice.
 */
export function sandFlush(plan: Plan, blank: string, contents: readonly Content[]): Fix[] {
    const made = Math.max(...contents.map(({ step }) => step));
    const face = plan.steps[made]?.face;
    const later = plan.steps.filter((other) => other.face === face && other.step.index > made);
    const finish = later.find(({ step }) => step.kind === 'finish')?.step;
    const sanding = later.find(({ step }) => step.kind === 'sand')?.step;
    const title = phrase`Sand ${blank} flush`;
    if (sanding?.kind === 'sand' && (finish === undefined || sanding.index < finish.index)) {
        if (sanding.flushWhere !== undefined || sanding.take !== undefined) return []; // it cannot be read, as is said of the text
        return [{ title, preferred: true, changes: [{ do: 'add', block: sanding.whole, statement: 'flush' }] }];
    }
    // A variant puts a step in beside one of its base's, and where is its maker's choice.
    if (sanding !== undefined || plan.recipe.base !== undefined) return [];
    const until = finish?.index ?? plan.steps.length;
    const before = [...waitFor(plan, contents, until)];
    for (const { inside, backed, blank: half } of plan.faces[until] ?? []) {
        if (inside !== blank || !backed) continue;
        if (faceAtEnd(plan, half)?.backed === false) return [];
        before.push(`peel ${half}`);
    }
    const statements = [...before, `sand ${blank} { flush  ${grits} }`];
    const change =
        finish === undefined
            ? ({ do: 'add', block: plan.recipe.whole, statement: statements.join('\n') } as const)
            : statementBefore(finish, statements.join('\n  '));
    return [{ title, preferred: true, changes: [change] }];
}

/** What is missing of the longest cure. */
function waitFor(plan: Plan, contents: readonly Content[], until: number): string[] {
    const missing = contents.map((content) => {
        const wanted = cureOf(plan, content)?.time ?? 0;
        const gone = elapsed(plan, content.step, until);
        return longEnough(gone, wanted) ? 0 : wanted - gone;
    });
    const most = Math.max(...missing);
    return most > 0 ? [`wait ${timeText(most)}`] : [];
}
