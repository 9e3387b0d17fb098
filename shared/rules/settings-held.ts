import type { Engrave } from '../recipe/step';

/** Whether power, speed and passes are all written, so that nothing is left to work out. */
export function settingsHeld(step: Engrave): boolean {
    return step.power !== undefined && step.speed !== undefined && step.passes !== undefined;
}
