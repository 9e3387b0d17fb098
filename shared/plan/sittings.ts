import type { Turn } from '../bench/work';
import type { Sitting, SittingJob, StepWork } from './plan';

/** A pause shorter than it takes to sit down counts as no pause. */
const breath = 60;

/**
 * The hands' turns, put together to sittings. Waits that take no hands lie between and beside them.
 *
 * @param waiting turns whose waits are told; those of other hands too, where several work
 */
export function sittingsOf(turns: readonly Turn[], works: readonly StepWork[], waiting: readonly Turn[] = turns): Sitting[] {
    const inHand = turns.filter((turn) => turn.end > turn.start).sort((a, b) => a.start - b.start);
    const groups: Turn[][] = [];
    for (const turn of inHand) {
        const group = groups.at(-1);
        if (group === undefined || turn.start > group.at(-1)!.end + breath) groups.push([turn]);
        else group.push(turn);
    }
    const waits = waiting.filter((turn) => turn.ready > turn.end);
    return groups.map((group, index) => {
        const start = group[0]!.start;
        const end = group.at(-1)!.end;
        const next = groups[index + 1]?.[0]?.start ?? Number.POSITIVE_INFINITY;
        const stepsOf = (some: readonly Turn[]): number[] => [...new Set(some.map(({ work }) => works[work]!.step))];
        return {
            start,
            end,
            jobs: jobsOf(group, works),
            meanwhile: stepsOf(waits.filter((wait) => wait.end <= start && wait.ready >= end)),
            until: Number.isFinite(next)
                ? stepsOf(waits.filter((wait) => wait.ready > end && wait.ready <= next && wait.end <= end))
                : [],
        };
    });
}

function jobsOf(group: readonly Turn[], works: readonly StepWork[]): SittingJob[] {
    const jobs: (SittingJob & { readonly work: number })[] = [];
    for (const { work, start, end } of group) {
        const { step, part, machine } = works[work]!;
        const last = jobs.at(-1);
        if (last?.work === work)
            jobs[jobs.length - 1] = { ...last, pieces: last.pieces + 1, end, machine: last.machine + machine };
        else jobs.push({ work, step, part, pieces: 1, start, end, machine });
    }
    return jobs.map(({ work: _work, ...job }) => job);
}
