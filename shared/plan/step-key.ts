import type { Step } from '../recipe/step';

/** What steps are known by while the text around them changes: kind, name and how many of the same came before. */
export function stepIds(steps: readonly Step[]): string[] {
    const seen = new Map<string, number>();
    return steps.map((step) => {
        const base = stepKey(step);
        const before = seen.get(base) ?? 0;
        seen.set(base, before + 1);
        return before === 0 ? base : `${base} ${before + 1}`;
    });
}

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
