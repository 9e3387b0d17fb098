import type { Grade } from '../../../language/stock-sources';
import type { CommandUsage } from './command-usage';
import { flag, format } from './options';

// Commands that tell of the tool's own knowledge.

/** How the lines of the built-in stock are known, the best first. */
export const stockGrades: Readonly<Record<Grade, string>> = {
    checked: 'somebody has read the source that is named, or it is computed from what was read there',
    'rule of thumb': 'common practice or our own judgement; no source is known',
    'not checked yet': 'from memory; nobody has read its source',
};

export const stockUsage = {
    name: 'stock',
    forms: ['[NAME ...]'],
    brief: 'the woods, glues, resins and finishes that are built in',
    more: [
        'Lists the names of what every recipe can use without declaring it; with names, the lines of those. What a shop writes itself goes before.',
        `With --sources each line says how it is known. ${Object.entries(stockGrades)
            .map(([grade, what]) => `${grade[0]!.toUpperCase()}${grade.slice(1)}: ${what}.`)
            .join(' ')}`,
    ],
    options: { sources: flag('How each line is known, and how many of each grade there are.') },
    examples: [
        { line: 'kerfbook stock teak', what: 'what is built in of teak' },
        { line: 'kerfbook stock --sources', what: 'where every figure comes from' },
    ],
} as const satisfies CommandUsage;

export const explainUsage = {
    name: 'explain',
    forms: ['[RULE ...]'],
    brief: 'what a rule looks at, why it matters and how it is mended',
    more: ['Without a name, a line for each rule.'],
    options: { format: format(['text', 'json']) },
    examples: [{ line: 'kerfbook explain thin-floor', what: 'the page of a rule that was named by check' }],
} as const satisfies CommandUsage;

export const vocabularyUsage = {
    name: 'vocabulary',
    forms: ['[WORD ...]'],
    brief: 'the words of the language, with place, meaning and an example',
    more: ['Without a word, all of them. As JSON for programs that write recipes.'],
    options: { format: format(['text', 'json']) },
    examples: [{ line: 'kerfbook vocabulary inlay', what: 'what can be said of an inlay' }],
} as const satisfies CommandUsage;

export const curveUsage = {
    name: 'curve',
    forms: ['BOARD LASER [FILE ...]'],
    brief: 'what a coupon says: depth by dose, with its range',
    more: [
        'The fit of the squares in figures, and the depth of one more square on that board for a single pass, over the doses that were measured.',
    ],
    options: { format: format(['text', 'json']) },
    examples: [{ line: 'kerfbook curve walnut-12 shed', what: 'of the coupon that these files hold' }],
} as const satisfies CommandUsage;
