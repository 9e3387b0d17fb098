import type { Plan } from '../plan/plan';
import type { Change, Fix } from '../recipe/finding';
import type { Step, Wait } from '../recipe/step';
import { statementBefore } from './statement-before';

/** Makes the last wait between two steps long enough, or puts one in front of the later; or at the end where none is later. */
export function longerWait(plan: Plan, from: Step, to: Step | undefined, missing: number): Fix {
    const waits = plan.recipe.steps.filter(
        (step): step is Wait => step.kind === 'wait' && step.index > from.index && (to === undefined || step.index < to.index),
    );
    const last = waits[waits.length - 1];
    if (last === undefined) {
        const text = `wait ${timeText(missing)}`;
        const added: Change =
            to === undefined ? { do: 'add', block: plan.recipe.whole, statement: text } : statementBefore(to, text);
        return { title: `Add \`${text}\``, preferred: true, changes: [added] };
    }
    const text = timeText(last.time.value + missing);
    return { title: `Wait ${text}`, preferred: true, changes: [{ do: 'replace', where: last.time.where, text }] };
}

/** A time as it is written, rounded up to whole hours, or to five minutes below one. */
export function timeText(seconds: number): string {
    if (seconds <= 3600 - 300) return `${Math.max(1, Math.ceil(seconds / 300 - 1e-9)) * 5} min`;
    const hours = Math.ceil(seconds / 3600 - 1e-9);
    return hours > 48 && hours % 24 === 0 ? `${hours / 24} d` : `${hours} h`;
}
