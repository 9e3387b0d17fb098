import type { Plan } from '../../plan/plan';
import type { Change, Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Step, Wait } from '../../recipe/step';
import type { Figures } from '../figures';
import { statementBefore } from './statement-before';

/**
 * Makes the last wait between two steps long enough, or puts one in front of the later; or at the end where none is later. None
 * where a longer wait would bring something else.
 */
export function longerWait(rule: string, plan: Plan, from: Step, to: Step | undefined, missing: number, figures: Figures): Fix[] {
    const waits = plan.recipe.steps.filter(
        (step): step is Wait => step.kind === 'wait' && step.index > from.index && (to === undefined || step.index < to.index),
    );
    const last = waits[waits.length - 1];
    if (last === undefined) {
        const step = to ?? { index: plan.recipe.steps.length };
        const { figure } = figures.agree({ rule, step, of: 'time before', figure: missing });
        const text = `wait ${timeText(figure ?? missing)}`;
        const added: Change =
            to === undefined ? { do: 'add', block: plan.recipe.whole, statement: text } : statementBefore(to, text);
        return [{ title: phrase`Add \`${text}\``, preferred: true, changes: [added] }];
    }
    const { figure } = figures.agree({
        rule,
        step: last,
        of: 'time',
        figure: roundedUp(last.time.value + missing),
        with: (value) => [{ ...last, time: { ...last.time, value } }],
    });
    if (figure === undefined) return [];
    const text = timeText(figure);
    return [{ title: phrase`Wait ${text}`, preferred: true, changes: [{ do: 'replace', where: last.time.where, text }] }];
}

/** To whole hours, or to five minutes below one; s. */
function roundedUp(seconds: number): number {
    if (seconds <= 3600 - 300) return Math.max(1, Math.ceil(seconds / 300 - 1e-9)) * 300;
    return Math.ceil(seconds / 3600 - 1e-9) * 3600;
}

/** A time as it is written, rounded up to whole hours, or to five minutes below one. */
export function timeText(seconds: number): string {
    const rounded = roundedUp(seconds);
    if (rounded < 3600) return `${rounded / 60} min`;
    const hours = rounded / 3600;
    return hours > 48 && hours % 24 === 0 ? `${hours / 24} d` : `${hours} h`;
}
