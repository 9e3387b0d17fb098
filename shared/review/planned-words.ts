import { powerWords } from '../burn/drift-words';
import { showNumber, showRatio } from '../quantity/show';
import type { PlannedBy, PlansMet, PowerHistory } from './run-history';

/** How depths met their plans, in a sentence without a full stop. */
export function metWords({ days, mean, leftOut }: PlansMet): string {
    const without = leftOut === 0 ? '' : `; ${leftOut} left out, the plan they followed is not known`;
    if (days.length === 0) return `no measured depth to tell by${without}`;
    const often = days.length === 1 ? 'one day' : `${days.length} days`;
    const where =
        mean === undefined
            ? `${showRatio(days[0]!.ratio)} of plan`
            : `${showRatio(mean.value)} of plan in the mean (${showNumber(Math.max(0, mean.low) * 100, 0)} to ${showNumber(mean.high * 100, 0)} %)`;
    return `${often}, ${where}${without}`;
}

/** What runs say of the power on a board, under its name. */
export function boardLine(board: PowerHistory): string {
    return `${board.sheet} on ${board.laser}: ${powerWords(board)}`;
}

export function metLine(met: PlansMet): string {
    return `${met.sheet} on ${met.laser}: ${metWords(met)}`;
}

export function plannedWords({ by, revision, commit }: PlannedBy): string {
    const where = commit === undefined ? '' : ` (${commit})`;
    if (by === 'the run') return `held against the depths that it keeps; settings against the plan of that time${where}`;
    if (by === 'the present plan') return `held against the present plan (issue ${revision})`;
    return `held against the plan of ${by}${where}`;
}
