import { showTime } from '../quantity/show';
import type { Step } from '../recipe/step';

/** What a step is called in lists, such as "Engrave pocket". */
export function stepTitle(step: Step): string {
    const unknown = '…';
    switch (step.kind) {
        case 'engrave':
            return `Engrave ${step.name}`;
        case 'cut':
            return `Cut ${step.name}`;
        case 'seal':
            return `Seal ${step.blank.value ?? unknown} with ${step.sealer?.name ?? unknown}`;
        case 'fill':
            return `Fill ${step.pocket.value ?? unknown} with ${step.resin?.name ?? unknown}`;
        case 'inlay':
            return `Let ${step.relief.value ?? unknown} into ${step.pocket.value ?? unknown}`;
        case 'wait':
            return `Wait ${showTime(step.time.value)}${step.longest === undefined ? '' : ` to ${showTime(step.longest.value)}`}`;
        case 'peel':
            return `Peel ${step.blank.value ?? unknown}`;
        case 'sand':
            return `Sand ${step.blank.value ?? unknown}`;
        case 'finish':
            return `Finish ${step.blank.value ?? unknown} with ${step.coat?.name ?? unknown}`;
        case 'mask':
            return `Mask ${step.blank.value ?? unknown}`;
        case 'check':
            return `Check ${step.step.value ?? unknown}`;
        case 'do':
            return step.text;
    }
}
