import { homesOf } from '../vocabulary/blocks';
import { constructs, stepWords, wordsOf } from '../vocabulary/constructs';
import { propertiesOf } from '../vocabulary/lookup';

/*
 * Words by which the shape of a text is known before it is parsed, out of the vocabulary.
 */

/** Words that begin both a block of stock and a line inside a block; stock has its brace behind the name. */
export const sharedEntries = new Set(wordsOf('file').filter((word) => homesOf(word).some((home) => home !== 'File')));
export const entries = new Set(wordsOf('file').filter((word) => !sharedEntries.has(word)));
export const steps: ReadonlySet<string> = new Set(stepWords);
/** Blocks that hold steps, besides a recipe. */
export const holdSteps = new Set(
    constructs.filter(({ type }) => type === 'Inserted' || type === 'Routine').map(({ word }) => word),
);
export const pointing = new Set(['after', 'before', 'without']);
/** Lines that can stand nowhere but in a recipe. */
export const recipeOnly = new Set([
    ...steps,
    ...wordsOf('recipe', 'needed'),
    ...wordsOf('recipe', 'none').filter((word) => word !== 'without'), // which leaves out lines of a step, too
    ...propertiesOf('Recipe').flatMap(({ takes, words, before }) => (takes === 'count' ? [words, before ?? words] : [])),
]);
/** Lines that are nothing without a block, and all lines that can have one. */
export const needBlock = new Set(
    (['file', 'recipe', 'step'] as const).flatMap((where) => wordsOf(where, 'needed')).filter((word) => !sharedEntries.has(word)),
);
export const canHaveBlock = new Set(constructs.flatMap(({ word, braces }) => (braces === 'none' ? [] : [word])));
/** All words with which a block can begin. */
export const blockHeads: readonly string[] = [...canHaveBlock];

/** Whether `without` before it leaves out a whole part of a recipe. */
export function isPart(word: string): boolean {
    return steps.has(word) || word === 'blank' || word === 'art' || word === 'places';
}
