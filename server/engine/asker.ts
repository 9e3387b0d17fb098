import { Memo } from '../../shared/plan/memo';
import type { JobWatcher } from '../worker/job-watcher';
import type { AnswerTo, ArtFile, Job } from './jobs';
import type { PlanEngine } from './plan-engine';

/** How somebody who asked looks on while a job is worked off. */
export interface Watch {
    /** The part that is done, 0 to 1. */
    readonly tell?: (part: number) => void;
    /** Takes what is to be called once nobody wants the answer any more; the job then rejects with Cancelled. */
    readonly onCancel?: (giveUp: () => void) => void;
}

/** Somebody who works jobs off, in this thread or another. */
export interface Asker {
    /** @param subject a newer job on the same subject cancels this one, which then rejects with Cancelled. */
    ask<J extends Job>(job: J, arts: readonly ArtFile[], subject?: string, watch?: Watch): Promise<AnswerTo<J>>;
    /** Absent where jobs hold up everything else anyway. */
    watch?(watcher: JobWatcher): void;
    /** Told whether anybody has a file open: what was worked out is kept for them. Absent where the process ends with its work. */
    setAttended?(isAttended: boolean): void;
}

/** Works jobs off at once, in this thread: for the command line and for tests. The engine is loaded by the first job that needs it. */
export class LocalAsker implements Asker {
    private engine: Promise<PlanEngine> | undefined;
    private readonly memo = new Memo();

    async ask<J extends Job>(job: J, arts: readonly ArtFile[]): Promise<AnswerTo<J>> {
        if ('past' in job) return (await import('./answer-history')).answerHistory(job, this.memo) as AnswerTo<J>;
        if (job.do === 'review') {
            const { reviewInBrief } = await import('./review-in-brief');
            const review = reviewInBrief(job, new Map(arts.map((file) => [file.uri, file])), this.memo);
            if (review !== undefined) return review as AnswerTo<J>;
        }
        this.engine ??= import('./plan-engine').then((loaded) => new loaded.PlanEngine());
        const engine = await this.engine;
        for (const file of arts) engine.setArt(file);
        return engine.run(job);
    }
}
