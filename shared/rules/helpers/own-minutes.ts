import type { Plan } from '../../plan/plan';
import type { Do, Step } from '../../recipe/step';

/** Steps in the maker's own words that belong to a step, and how long they take for one piece, s. */
export interface OwnMinutes {
    readonly time: number;
    readonly steps: readonly Do[];
}

/** Which words of a `do` step say that it belongs to the step behind it, and to the one before it. */
interface Words {
    readonly before: RegExp;
    readonly after: RegExp;
}

export const spreadsGlue: Words = {
    before: /\b(?:spread|brush|roll|apply|dab|paint)\w*(?: on)?(?: (?!out\b)\w+){0,2} glue\b|\bglue\b (?:is )?(?:spread|brushed|rolled|applied|dabbed)\b/i,
    after: /^(?:lay|lin(?:e|ing)|align|seat|fit|push|tap|slide|set) /i,
};
export const pours: Words = {
    before: /^(?:pour|drip|trickle|fill|run) |\bdrop by drop\b/i,
    after: /^(?:pour|drip|trickle|fill|run) |\bdrop by drop\b/i,
};

/** The minutes that `do` steps right before and right behind a step give to it, by their words; none where no such step says how long it takes. */
export function ownMinutes({ steps }: Plan, { index }: Step, words: Words): OwnMinutes | undefined {
    const found: Do[] = [];
    for (let at = index - 1; at >= 0; at--) {
        const step = steps[at]!.step;
        if (step.kind !== 'do') break;
        if (words.before.test(step.text)) found.unshift(step);
    }
    for (let at = index + 1; at < steps.length; at++) {
        const step = steps[at]!.step;
        if (step.kind !== 'do') break;
        if (words.after.test(step.text)) found.push(step);
    }
    const time = found.reduce((sum, step) => sum + (step.time?.value ?? 0), 0);
    return time > 0 ? { time, steps: found.filter((step) => step.time !== undefined) } : undefined;
}
