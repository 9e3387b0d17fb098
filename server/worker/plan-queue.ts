import type { Watch } from '../engine/asker';
import { type AnswerTo, type ArtFile, Cancelled, type Job } from '../engine/jobs';
import type { JobWatcher, WatchedJob } from './job-watcher';
import type { FromWorker, Port, ToWorker } from './messages';

interface Waiting {
    /** Grows with every time it is begun. */
    id: number;
    /** Stopped for something that cannot wait, to be begun anew. */
    postponed: boolean;
    readonly job: Job;
    readonly arts: readonly ArtFile[];
    /** Jobs with the same subject replace each other: only the latest is wanted. */
    readonly subject: string | undefined;
    readonly tell: ((part: number) => void) | undefined;
    readonly resolve: (answer: never) => void;
    readonly reject: (error: Error) => void;
}

/** Quiet after the last job before what was worked out is forgotten, where nothing is open, ms. */
const QUIET_MS = 1000;

/** The asking side of the worker: one job at a time, a newer job on the same subject cancels the older. */
export class PlanQueue {
    private waiting: Waiting[] = [];
    private running: Waiting | undefined;
    private readonly sent = new Map<string, string>();
    private readonly cancelled: Int32Array | undefined;
    private port: Port<FromWorker, ToWorker>;
    private count = 0;
    private watcher: JobWatcher | undefined;
    private isAttended = true;
    private quiet: ReturnType<typeof setTimeout> | undefined;
    private watched: WatchedJob | undefined;

    /** @param makePort starts a worker; called again should one die. */
    constructor(private readonly makePort: (died: () => void) => Port<FromWorker, ToWorker>) {
        this.cancelled = typeof SharedArrayBuffer === 'undefined' ? undefined : new Int32Array(new SharedArrayBuffer(4));
        this.port = this.start();
    }

    ask<J extends Job>(job: J, arts: readonly ArtFile[], subject?: string, watch?: Watch): Promise<AnswerTo<J>> {
        return new Promise((resolve, reject) => {
            if (subject !== undefined) this.giveUp((one) => one.subject === subject);
            const mine: Waiting = {
                id: 0,
                postponed: false,
                job,
                arts,
                subject,
                tell: watch?.tell,
                resolve: resolve as (answer: never) => void,
                reject,
            };
            // Somebody's cursor rests on a coupon, and its fit takes a moment only.
            if (job.do === 'fit') this.waiting.unshift(mine);
            else if (canWait(job)) this.waiting.push(mine);
            else this.waiting.splice(this.firstThatCanWait(), 0, mine);
            watch?.onCancel?.(() => this.giveUp((one) => one === mine));
            this.makeWay(job);
            this.next();
        });
    }

    watch(watcher: JobWatcher): void {
        this.watcher = watcher;
    }

    setAttended(isAttended: boolean): void {
        this.isAttended = isAttended;
        this.forgetLater();
    }

    /** Ends the worker. Nothing may be asked any more. */
    end(): void {
        clearTimeout(this.quiet);
        this.port.end?.();
    }

    /** Once nothing is open and all is worked off, what was worked out only fills the memory. */
    private forgetLater(): void {
        clearTimeout(this.quiet);
        if (this.isAttended || this.running !== undefined) return;
        this.quiet = setTimeout(() => {
            if (this.isAttended || this.running !== undefined) return;
            this.sent.clear();
            this.port.post({ kind: 'forget' });
        }, QUIET_MS);
    }

    private giveUp(unwanted: (one: Waiting) => boolean): void {
        const old = this.waiting.filter(unwanted);
        this.waiting = this.waiting.filter((one) => !old.includes(one));
        for (const one of old) one.reject(new Cancelled());
        if (this.running === undefined || !unwanted(this.running)) return;
        this.running.postponed = false;
        this.stop(this.running);
    }

    private firstThatCanWait(): number {
        const first = this.waiting.findIndex(({ job }) => canWait(job));
        return first < 0 ? this.waiting.length : first;
    }

    /** Some jobs take their time, and what somebody types does not wait for them. */
    private makeWay(job: Job): void {
        if (this.running === undefined || !canWait(this.running.job) || canWait(job) || this.cancelled === undefined) return;
        this.running.postponed = true;
        this.stop(this.running);
    }

    private beginAnew(job: Waiting): void {
        job.postponed = false;
        this.waiting.push(job);
    }

    /** Has no say where no memory can be shared: then the job runs to its end. */
    private stop({ id }: Waiting): void {
        // Ids only grow, so "everything up to this one" names the running job alone.
        if (this.cancelled !== undefined) Atomics.store(this.cancelled, 0, id);
    }

    private next(): void {
        if (this.running !== undefined) return;
        const job = this.waiting.shift();
        if (job === undefined) return;
        this.running = job;
        job.id = ++this.count;
        this.watched = this.watcher?.begun(titleOf(job.job), () => this.giveUp((one) => one === job));
        for (const file of job.arts) {
            if (this.sent.get(file.uri) === file.version) continue;
            this.sent.set(file.uri, file.version);
            this.port.post({ kind: 'art', file });
        }
        this.port.post({ kind: 'job', id: job.id, job: job.job });
    }

    private start(): Port<FromWorker, ToWorker> {
        const port = this.makePort(() => this.restart());
        port.listen((message) => this.receive(message));
        port.post({
            kind: 'start',
            ...(this.cancelled === undefined ? {} : { cancelled: this.cancelled.buffer as SharedArrayBuffer }),
        });
        return port;
    }

    private receive(message: FromWorker): void {
        const job = this.running;
        if (job === undefined || job.id !== message.id) return;
        if (message.kind === 'stage') {
            this.watched?.stage(message.stage);
            return;
        }
        if (message.kind === 'progress') {
            job.tell?.(message.part);
            return;
        }
        this.running = undefined;
        this.watched?.ended();
        if (message.kind === 'answer') job.resolve(message.answer as never);
        else if (message.kind === 'cancelled' && job.postponed) this.beginAnew(job);
        else job.reject(message.kind === 'cancelled' ? new Cancelled() : new Error(message.message));
        this.next();
        this.forgetLater();
    }

    /** A worker that died (out of memory, say) takes its job with it and nothing else. */
    private restart(): void {
        const job = this.running;
        this.running = undefined;
        this.watched?.ended();
        this.sent.clear();
        this.port = this.start();
        job?.reject(new Error('Working this out took more memory than there is.'));
        this.next();
    }
}

/** Kinds of jobs that may take long and that nobody waits for with a finger on a key. */
const patient: ReadonlySet<Job['do']> = new Set([
    'survey',
    'booked',
    'aims',
    'press',
    'review-page',
    'table-page',
    'history-page',
    'week',
    'week-page',
    'season',
    'season-page',
]);

function canWait(job: Job): boolean {
    return patient.has(job.do);
}

function titleOf(job: Job): string {
    if (job.do === 'coupons' || job.do === 'fit') return 'Looking at coupons';
    if (job.do === 'coupon-layout' || job.do === 'coupon-sheets') return 'Making a coupon';
    if (job.do === 'page') return `Explaining ${job.rule}`;
    if (job.do === 'placeholder') return 'Drawing a picture to begin with';
    if (job.do === 'review-page') return 'Comparing versions';
    if ('columns' in job) return 'Laying recipes side by side';
    if ('runs' in job) return 'Summing up the season';
    if ('entries' in job) return 'Planning the week';
    return `Working out ${job.recipe.name}`;
}
