import type { Cut, Engrave } from '../../recipe/step';

/** Whether power, speed and passes are all written, so that nothing is left to work out. */
export function settingsHeld(step: Engrave | Cut): boolean {
    return step.power !== undefined && step.speed !== undefined && step.passes !== undefined;
}
