import type { Cut, Engrave } from './step';

/** Whether an engraving follows its outline and leaves the area as it is. */
export function followsOutline(step: Engrave | Cut): boolean {
    return step.kind === 'engrave' && step.scan?.direction === 'outline';
}
