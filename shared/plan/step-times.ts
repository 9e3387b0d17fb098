import { benchTimes } from '../bench/bench-times';
import type { Step } from '../recipe/step';
import type { Times } from './plan';

const none: Times = { machine: 0, attended: 0, waiting: 0 };

/** Times of one step for one piece, in s: what the machine takes, what the hands take, what has to be waited for. */
export function stepTimes(step: Step, machine: number): Times {
    switch (step.kind) {
        case 'engrave':
        case 'cut':
            return { machine, attended: benchTimes.laserSetUp, waiting: 0 };
        case 'mask':
            return { ...none, attended: benchTimes.maskBlank };
        case 'seal':
            return {
                ...none,
                attended: benchTimes.sealCoat * step.coats,
                waiting: (step.sealer?.dry?.value ?? 0) * Math.max(0, step.coats - 1),
            };
        case 'fill':
            return { ...none, attended: benchTimes.mixAndFill };
        case 'inlay':
            return { ...none, attended: benchTimes.glueAndPress };
        case 'peel':
            return { ...none, attended: benchTimes.peel };
        case 'sand':
            return { ...none, attended: benchTimes.sandPerGrit * Math.max(1, step.grits.length) };
        case 'finish':
            return {
                ...none,
                attended: benchTimes.finishCoat * step.coats,
                waiting: (step.coat?.dry?.value ?? 0) * Math.max(0, step.coats - 1),
            };
        case 'check':
            return { ...none, attended: benchTimes.check };
        case 'wait':
            return { ...none, waiting: step.time.value };
        case 'do':
            return { ...none, attended: step.time?.value ?? 0 };
    }
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
