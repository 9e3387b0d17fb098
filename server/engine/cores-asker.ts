import { nodePort } from '../worker/node-port';
import { PlanQueue } from '../worker/plan-queue';
import type { Asker } from './asker';
import type { AnswerTo, ArtFile, Job } from './jobs';

interface Lane {
    readonly queue: PlanQueue;
    open: number;
}

/** With nothing to do for so long the workers end, so that they do not hold up a process that is done, ms. */
const IDLE = 100;

/** Works jobs off on several cores, each job on the one that has least to do: for the command line, where it looks at many recipes. */
export class CoresAsker implements Asker {
    private lanes: readonly Lane[] = [];
    private idle: ReturnType<typeof setTimeout> | undefined;

    /** @param worker the bundle that each core runs */
    constructor(
        private readonly worker: string,
        private readonly cores: number,
    ) {}

    async ask<J extends Job>(job: J, arts: readonly ArtFile[]): Promise<AnswerTo<J>> {
        clearTimeout(this.idle);
        if (this.lanes.length === 0) this.lanes = Array.from({ length: this.cores }, () => this.lane());
        const lane = this.lanes.reduce((least, each) => (each.open < least.open ? each : least));
        lane.open++;
        try {
            return await lane.queue.ask(job, arts);
        } finally {
            lane.open--;
            if (this.lanes.every(({ open }) => open === 0)) this.idle = setTimeout(() => this.end(), IDLE);
        }
    }

    private lane(): Lane {
        return { queue: new PlanQueue((died) => nodePort(this.worker, died)), open: 0 };
    }

    private end(): void {
        for (const { queue } of this.lanes) queue.end();
        this.lanes = [];
    }
}
