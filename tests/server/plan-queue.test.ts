import { describe, expect, it } from 'vitest';
import { Cancelled, type Job } from '../../server/engine/jobs';
import type { FromWorker, Port, ToWorker } from '../../server/worker/messages';
import { PlanQueue } from '../../server/worker/plan-queue';
import type { Recipe } from '../../shared/recipe/recipe';

/** A worker that answers when the test says so. */
class HandWorker {
    readonly got: ToWorker[] = [];
    private receive: (message: FromWorker) => void = () => {};
    died: () => void = () => {};

    readonly port = (died: () => void): Port<FromWorker, ToWorker> => {
        this.died = died;
        return {
            post: (message) => this.got.push(message),
            listen: (receive) => {
                this.receive = receive;
            },
        };
    };

    jobs(): { id: number; job: Job }[] {
        return this.got.flatMap((message) => (message.kind === 'job' ? [message] : []));
    }

    stage(stage: string): void {
        this.receive({ kind: 'stage', id: this.jobs().at(-1)!.id, stage });
    }

    cancel(): void {
        this.receive({ kind: 'cancelled', id: this.jobs().at(-1)!.id });
    }

    tell(part: number): void {
        this.receive({ kind: 'progress', id: this.jobs().at(-1)!.id, part });
    }

    answer(answer: unknown): void {
        this.receive({ kind: 'answer', id: this.jobs().at(-1)!.id, answer });
    }
}

const job = { do: 'examine', recipe: { name: 'tray' } as Recipe } as const;
const press = { do: 'press', recipe: job.recipe, step: 2 } as const;
const heron = { uri: 'file:///heron.svg', version: '1', bytes: new Uint8Array([1]) };

describe('the queue before the worker', () => {
    it('sends one job at a time, and art once for each version', async () => {
        const worker = new HandWorker();
        const queue = new PlanQueue(worker.port);
        const first = queue.ask(job, [heron]);
        const second = queue.ask(job, [heron]);
        const third = queue.ask(job, [{ ...heron, version: '2' }]);
        expect(worker.jobs()).toHaveLength(1);
        worker.answer(['a']);
        expect(await first).toEqual(['a']);
        worker.answer(['b']);
        expect(await second).toEqual(['b']);
        worker.answer([]);
        await third;
        expect(worker.got.filter((message) => message.kind === 'art')).toHaveLength(2);
    });

    it('a newer job takes the place of a waiting one and cancels a running one', async () => {
        const worker = new HandWorker();
        const queue = new PlanQueue(worker.port);
        const started = worker.got[0]!;
        const flag = new Int32Array(started.kind === 'start' ? started.cancelled! : new SharedArrayBuffer(4));
        const running = queue.ask(job, [], 'tray');
        expect(Atomics.load(flag, 0)).toBe(0);
        const waiting = queue.ask(job, [], 'tray');
        expect(Atomics.load(flag, 0)).toBe(worker.jobs()[0]!.id);
        const newest = queue.ask(job, [], 'tray');
        await expect(waiting).rejects.toBeInstanceOf(Cancelled);
        worker.answer(['old']);
        expect(await running).toEqual(['old']);
        worker.answer(['new']);
        expect(await newest).toEqual(['new']);
    });

    it('tells of a running job and its stages, and gives it up when that is asked for', async () => {
        const worker = new HandWorker();
        const queue = new PlanQueue(worker.port);
        const started = worker.got[0]!;
        const flag = new Int32Array(started.kind === 'start' ? started.cancelled! : new SharedArrayBuffer(4));
        const told: string[] = [];
        let giveUp = (): void => {};
        queue.watch({
            begun: (title, cancel) => {
                told.push(title);
                giveUp = cancel;
                return { stage: (name) => told.push(name), ended: () => told.push('end') };
            },
        });
        const running = queue.ask(job, []);
        worker.stage('art');
        worker.stage('hatch');
        giveUp();
        expect(Atomics.load(flag, 0)).toBe(worker.jobs()[0]!.id);
        worker.answer([]);
        await running;
        worker.stage('late');
        expect(told).toEqual(['Working out tray', 'art', 'hatch', 'end']);
    });

    it('tells how far a job is, and stops it when it is no longer wanted', async () => {
        const worker = new HandWorker();
        const queue = new PlanQueue(worker.port);
        const parts: number[] = [];
        let giveUp = (): void => {};
        const watch = {
            tell: (part: number): void => void parts.push(part),
            onCancel: (call: () => void): void => {
                giveUp = call;
            },
        };
        const asked = queue.ask(press, [], undefined, watch);
        worker.tell(0.3);
        giveUp();
        worker.cancel();
        await expect(asked).rejects.toBeInstanceOf(Cancelled);
        expect(parts).toEqual([0.3]);
        expect(worker.jobs()).toHaveLength(1);
    });

    it('squiggles make way for a picture', async () => {
        const worker = new HandWorker();
        const queue = new PlanQueue(worker.port);
        const recipe = {} as Recipe;
        const surveyed = queue.ask({ do: 'survey', recipe }, []);
        const seen = queue.ask({ do: 'checklist', recipe }, []);
        worker.cancel();
        worker.answer('checklist');
        await seen;
        expect(worker.jobs().map((one) => one.job.do)).toEqual(['survey', 'checklist', 'survey']);
        worker.answer('squiggles');
        expect(await surveyed).toBe('squiggles');
    });

    it('a picture is begun before squiggles that wait, and no sooner than one asked for before', async () => {
        const worker = new HandWorker();
        const queue = new PlanQueue(worker.port);
        const recipe = {} as Recipe;
        const asked = [
            queue.ask({ do: 'examine', recipe }, []),
            queue.ask({ do: 'survey', recipe }, []),
            queue.ask({ do: 'booked', recipe }, []),
            queue.ask({ do: 'checklist', recipe }, []),
            queue.ask({ do: 'summary', recipe }, []),
        ];
        for (const each of asked) {
            worker.answer('done');
            void each;
        }
        await Promise.all(asked);
        expect(worker.jobs().map((one) => one.job.do)).toEqual(['examine', 'checklist', 'summary', 'survey', 'booked']);
    });

    it('a comparison makes way too', async () => {
        const worker = new HandWorker();
        const queue = new PlanQueue(worker.port);
        const compared = queue.ask({ do: 'review-page', reviews: [] }, []);
        const typed = queue.ask(job, []);
        worker.cancel();
        worker.answer([]);
        await typed;
        expect(worker.jobs().map((one) => one.job.do)).toEqual(['review-page', 'examine', 'review-page']);
        worker.answer('markup');
        expect(await compared).toBe('markup');
    });

    it('a press makes way for what somebody types, and is begun anew after it', async () => {
        const worker = new HandWorker();
        const queue = new PlanQueue(worker.port);
        const pressed = queue.ask(press, []);
        const typed = queue.ask(job, []);
        worker.cancel();
        expect(worker.jobs().map((one) => one.job.do)).toEqual(['press', 'examine']);
        worker.answer(['typed']);
        expect(await typed).toEqual(['typed']);
        expect(worker.jobs().at(-1)!.job.do).toBe('press');
        worker.answer('pressed');
        expect(await pressed).toBe('pressed');
    });

    it('a worker that dies is started anew and the next job is answered', async () => {
        const worker = new HandWorker();
        const queue = new PlanQueue(worker.port);
        const lost = queue.ask(job, [heron]);
        const next = queue.ask(job, [heron]);
        worker.died();
        await expect(lost).rejects.toThrow('memory');
        worker.answer(['fine']);
        expect(await next).toEqual(['fine']);
        expect(worker.got.filter((message) => message.kind === 'art')).toHaveLength(2);
    });
});
