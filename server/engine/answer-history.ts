import { asKnownOn, isChangedSince } from '../../shared/burn/run-rows';
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
    const held = recipe.runs.map((run, index): HeldRun => {
        const then = past[index];
        const day = run.date.value;
        // What was measured on its day and since has taught the plan of today, not the one that it followed.
        const plan = planBurns(asKnownOn(then?.recipe ?? recipe, day), memo);
        if (then !== undefined) {
            const by = then.isOfDay ? 'its day' : 'its issue';
            return { run, plan, planned: { by, revision: then.recipe.revision, commit: then.commit } };
        }
        const isOwn = run.revision !== undefined && run.revision === recipe.revision && !isChangedSince(recipe, day);
        return { run, plan, planned: { by: isOwn ? 'its issue' : 'the present plan', revision: recipe.revision } };
    });
    return runHistory({ recipe, boards: planBoards(recipe, memo) }, held, last);
}
