import type { LaserStep } from '../../plan/plan';
import type { Change } from '../../recipe/finding';

/** Has a step mirror: a line of its own, or in the place of the one that says no to it. */
export function sayMirror({ mirrorOff, whole }: LaserStep): Change {
    return mirrorOff === undefined
        ? { do: 'add', block: whole, statement: 'mirror' }
        : { do: 'replace', where: mirrorOff, text: 'mirror' };
}
