import type { Recipe } from '../../recipe/recipe';
import type { Step } from '../../recipe/step';

/** Whether a line of a step cannot be read, so that what seems to be left out may be written there: the text's own finding is the cause. */
export function isUnread({ incomplete = [] }: Recipe, { whole }: Step): boolean {
    return incomplete.some(
        ({ uri, offset }) => uri === whole.uri && offset >= whole.offset && offset <= whole.offset + whole.length,
    );
}
