import type { Change } from '../../recipe/finding';
import type { Step } from '../../recipe/step';

/** Writes statements, each on a line of its own, in front of a step. */
export function statementBefore(step: Step, statement: string): Change {
    return { do: 'replace', where: { ...step.whole, length: 0 }, text: `${statement}\n  ` };
}
