import type { Change } from '../../recipe/finding';
import type { Engrave } from '../../recipe/step';

/** Has a step mirror: a line of its own, or in the place of the one that says no to it. */
export function sayMirror({ mirrorOff, whole }: Engrave): Change {
    return mirrorOff === undefined
        ? { do: 'add', block: whole, statement: 'mirror' }
        : { do: 'replace', where: mirrorOff, text: 'mirror' };
}
