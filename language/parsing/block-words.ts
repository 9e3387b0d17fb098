/** Words by which the shape of a text is known before it is parsed. */

export const entries = new Set(['use', 'recipe', 'run', 'board', 'veneer', 'coupon', 'resin', 'sealer', 'abrasive', 'shop']);
/** Words that begin both a block of stock and a line inside a block; stock has its brace behind the name. */
export const sharedEntries = new Set(['laser', 'wood', 'beam', 'glue', 'finish']);
export const steps = new Set([
    'engrave',
    'cut',
    'seal',
    'fill',
    'inlay',
    'wait',
    'peel',
    'sand',
    'finish',
    'mask',
    'check',
    'do',
]);
export const recipeOnly = new Set([...steps, 'blank', 'revision', 'make', 'after', 'before']);
/** Lines that are nothing without a block, and all lines that can have one. */
export const needBlock = new Set([
    'recipe',
    'run',
    'board',
    'veneer',
    'coupon',
    'resin',
    'sealer',
    'abrasive',
    'shop',
    'engrave',
    'cut',
    'sand',
    'check',
    'blank',
    'after',
    'before',
]);
/** Blocks of a variant that hold steps. */
export const holdSteps = new Set(['after', 'before']);
export const pointing = new Set([...holdSteps, 'without']);
export const canHaveBlock = new Set([...needBlock, ...sharedEntries, ...steps, 'art']);
/** All words with which a block can begin. */
export const blockHeads: readonly string[] = [...canHaveBlock];

/** Whether `without` before it leaves out a whole part of a recipe. */
export function isPart(word: string): boolean {
    return steps.has(word) || word === 'blank' || word === 'art';
}
