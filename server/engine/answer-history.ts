import type { Memo } from '../../shared/plan/memo';
import { planBoards } from '../../shared/plan/plan-boards';
import { planBurns } from '../../shared/plan/plan-burns';
import { historyBody } from '../../shared/review/html/history';
import { type HeldRun, type RunHistory, runHistory } from '../../shared/review/run-history';
import { editorLinks } from './editor-links';
import type { HistoryJob } from './jobs';

/** Holds the runs of a recipe against the depths and settings that were planned for them. */
export function answerHistory(job: HistoryJob, memo: Memo): RunHistory | string {
    const history = historyOf(job, memo);
    if (job.do === 'history') return history;
    return historyBody([history], editorLinks, new Map(job.recipe.runs.map(({ date }) => [date.value, date.where])));
}

function historyOf({ recipe, past, last }: HistoryJob, memo: Memo): RunHistory {
    const now = planBurns(recipe, memo);
    const held = recipe.runs.map((run, index): HeldRun => {
        const then = past[index];
        if (then === undefined) {
            const own = run.revision !== undefined && run.revision === recipe.revision;
            return { run, plan: now, planned: { by: own ? 'its issue' : 'the present plan', revision: recipe.revision } };
        }
        const planned = { by: 'its issue', revision: then.recipe.revision, commit: then.commit } as const;
        return { run, plan: planBurns(then.recipe, memo), planned };
    });
    return runHistory({ recipe, boards: planBoards(recipe, memo) }, held, last);
}
