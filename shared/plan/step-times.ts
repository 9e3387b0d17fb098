import { benchTimes, type HandTime } from '../bench/bench-times';
import type { Step } from '../recipe/step';
import type { FillPlan, Times } from './plan';

const none: Times = { machine: 0, attended: 0, waiting: 0 };

/** Times of one step for one piece, in s: what the machine takes, what the hands take, what has to be waited for. */
export function stepTimes(step: Step, machine: number): Times {
    const { setUp, each } = handTime(step);
    return { machine: machineWork(step) ? machine : 0, attended: setUp + each, waiting: waitingTime(step) };
}

/** Times of a fill for one piece, s: every pour is mixed, poured and waited for before the next. */
export function fillTimes({ pours }: FillPlan): Times {
    const count = Math.max(1, pours.count);
    const { setUp, each } = times(benchTimes.mixAndFill, count);
    return { machine: 0, attended: setUp + each, waiting: (count - 1) * pours.between };
}

function machineWork(step: Step): boolean {
    return step.kind === 'engrave' || step.kind === 'cut';
}

/** Waits between the coats of a step, or the wait itself; s. */
function waitingTime(step: Step): number {
    switch (step.kind) {
        case 'wait':
            return step.time.value;
        case 'seal':
            return (step.sealer?.dry?.value ?? 0) * Math.max(0, step.coats - 1);
        case 'finish':
            return (step.coat?.dry?.value ?? 0) * Math.max(0, step.coats - 1);
        default:
            return 0;
    }
}

/** Hands-on time of a step, s: once for a run of pieces, and for each piece. */
export function handTime(step: Step): HandTime {
    switch (step.kind) {
        case 'engrave':
        case 'cut':
            return benchTimes.laser;
        case 'mask':
            return benchTimes.mask;
        case 'seal':
            return times(benchTimes.sealCoat, step.coats);
        case 'finish':
            return times(benchTimes.finishCoat, step.coats);
        case 'fill':
            return benchTimes.mixAndFill;
        case 'inlay':
            return benchTimes.glueAndPress;
        case 'peel':
            return benchTimes.peel;
        case 'sand':
            return times(benchTimes.sandGrit, Math.max(1, step.grits.length));
        case 'flip':
            return benchTimes.flip;
        case 'check':
            return benchTimes.check;
        case 'do':
            return { setUp: 0, each: step.time?.value ?? 0 };
        case 'wait':
            return { setUp: 0, each: 0 };
    }
}

function times(one: HandTime, count: number): HandTime {
    return { setUp: one.setUp * count, each: one.each * count };
}

export function sumTimes(all: readonly Times[]): Times {
    return all.reduce(
        (sum, times) => ({
            machine: sum.machine + times.machine,
            attended: sum.attended + times.attended,
            waiting: sum.waiting + times.waiting,
        }),
        none,
    );
}
