import { refocusings } from '../plan/plan-focus';
import { showNumber } from '../quantity/show';

/** More changes than these are told by how many they are. */
const mostTold = 4;

/** What the focus does during the passes of a step, in one line; undefined where it stays on the face. */
export function focusLine(focus: readonly number[] | undefined): string | undefined {
    const changes = refocusings(focus);
    if (changes.length === 0) return undefined;
    const depth = (height: number): string => `${showNumber(height, 2)} mm below it`;
    if (changes.length > mostTold) {
        return `on the face at first, lowered ${changes.length} times between passes, to ${depth(changes.at(-1)!.height)} in the end`;
    }
    return `on the face at first, ${changes.map(({ pass, height }) => `from pass ${pass} on ${depth(height)}`).join(', ')}`;
}
