import type { Step } from '../recipe/step';

/** What makes a step the same step while the text around it changes: its kind and what it is done to. Not unique. */
export function stepKey(step: Step): string {
    switch (step.kind) {
        case 'engrave':
        case 'cut':
            return `${step.kind} ${step.name}`;
        case 'inlay':
            return `inlay ${step.relief.value ?? ''}`;
        case 'fill':
            return `fill ${step.pocket.value ?? ''}`;
        case 'check':
            return `check ${step.step.value ?? ''}`;
        case 'wait':
            return 'wait';
        case 'do':
            return `do ${step.text}`;
        default:
            return `${step.kind} ${step.blank.value ?? ''}`;
    }
}
