import { showTime } from '../quantity/show';
import type { Step } from '../recipe/step';

/** What a step is called in lists, such as "Engrave pocket". */
export function stepTitle(step: Step): string {
    switch (step.kind) {
        case 'engrave':
            return `Engrave ${step.name}`;
        case 'cut':
            return `Cut ${step.name}`;
        case 'seal':
            return `Seal ${shown(step.blank.value)} with ${shown(step.sealer?.name)}`;
        case 'fill':
            return `Fill ${shown(step.pocket.value)} with ${shown(step.resin?.name)}`;
        case 'inlay':
            return `Let ${shown(step.relief.value)} into ${shown(step.pocket.value)}`;
        case 'wait':
            return `Wait ${showTime(step.time.value)}${step.longest === undefined ? '' : ` to ${showTime(step.longest.value)}`}`;
        case 'peel':
            return `Peel ${shown(step.blank.value)}`;
        case 'sand':
            return `Sand ${shown(step.blank.value)}`;
        case 'finish':
            return `Finish ${shown(step.blank.value)} with ${shown(step.coat?.name)}`;
        case 'mask':
            return `Mask ${shown(step.blank.value)}${step.film === undefined ? '' : ` with ${step.film.name}`}`;
        case 'flip':
            return `Flip ${shown(step.blank.value)}${step.axis === 'level' ? ' about level' : ''}`;
        case 'check':
            return `Check ${shown(step.step.value)}`;
        case 'do':
            return step.text;
    }
}

/** A name, or dots where it is not known yet. */
function shown(name: string | undefined): string {
    return name ?? '…';
}
