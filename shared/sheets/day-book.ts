import type { Plan, Sitting, SittingJob, StepPlan } from '../plan/plan';
import { showTime } from '../quantity/show';

/** A sitting in words; times in s from the start. */
export interface DayBookEntry extends Sitting<DayBookJob, string> {
    /** How long until the next sitting; absent after the last. */
    readonly pause?: number;
}

export interface DayBookJob extends Omit<SittingJob, 'part' | 'end'> {
    /** Such as "Finish tray with tung-oil, coat 2 of 3". */
    readonly title: string;
    readonly length: number;
}

/** More sittings than anybody reads; the rest goes on in the same way. */
const mostEntries = 60;

/** The run as a bench's day book: who is at it when, and what happens by itself meanwhile. */
export function dayBook(plan: Plan): DayBookEntry[] {
    const { sittings } = plan.schedule;
    return sittings.slice(0, mostEntries).map((sitting, index) => entryOf(plan, sitting, sittings[index + 1]));
}

function entryOf(plan: Plan, { start, end, jobs, meanwhile, until }: Sitting, next: Sitting | undefined): DayBookEntry {
    return {
        start,
        end,
        ...(next === undefined ? {} : { pause: next.start - end }),
        jobs: jobs.map((job) => jobOf(plan, job)),
        meanwhile: meanwhile.map((step) => waitOf(plan, step)),
        until: until.length === 0 && next !== undefined ? ['the next working day'] : until.map((step) => waitOf(plan, step)),
    };
}

function jobOf(plan: Plan, { step, part, pieces, start, end, machine }: SittingJob): DayBookJob {
    const title = plan.steps[step]?.title ?? '';
    return { step, title: part === '' ? title : `${title}, ${part}`, pieces, length: end - start, machine, start };
}

/** A wait by its reason, or by what has to dry or set before it goes on. */
export function waitOf({ steps }: { readonly steps: readonly Pick<StepPlan, 'step' | 'title'>[] }, index: number): string {
    const { step, title } = steps[index]!;
    if (step.kind === 'wait') return step.reason ?? `wait ${showTime(step.time.value)}`;
    return step.kind === 'fill' ? `${title}: a layer sets` : `${title}: a coat dries`;
}

/** "Engrave pocket, 4 pieces, 1 h 20 min of which the laser runs 1 h 4 min". */
export function jobWords({ title, pieces, length, machine }: DayBookJob, make: number): string {
    const many = make === 1 ? '' : `, ${pieces} piece${pieces === 1 ? '' : 's'}`;
    const laser = machine > 0 ? `, of which the laser runs ${showTime(machine)}` : '';
    return `${title}${many}: ${showTime(length)}${laser}`;
}
