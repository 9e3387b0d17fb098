import type { Grade } from '../../../language/stock-sources';
import type { CommandUsage } from './command-usage';
import { flag, format, word } from './options';

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

export const layUsage = {
    name: 'lay',
    forms: ['FILE --set-up NUMBER --marks "X,Y X,Y"'],
    brief: 'the files of one set-up, moved and turned for the piece on the bed',
    more: [
        'Of a set-up that is found by marks or pins (`found by marks of`), takes where they were measured on the machine, in mm from X 0 Y 0 and in the order of the job sheet, and writes its drawing and machine file into made/NAME/laid-NUMBER, with a record of what was measured, how far it is turned and moved and what is left. Nothing is scaled. Beyond 1 mm left, 1 % in distance or 10 degrees nothing is written.',
    ],
    options: {
        'set-up': word('NUMBER', 'Which set-up, as the job sheet numbers them.'),
        marks: word('PLACES', 'Where the marks were found, such as "10.2,40.1 90.3,39.8"; - for one that was not measured.'),
        anyway: flag('Also where the marks fit the plan worse than that.'),
        recipe: word('NAME', 'The recipe, where the file has several.'),
        out: word('FOLDER', 'Write below this folder instead.'),
        force: flag('Also over what you changed by hand, and although an error is open.'),
    },
    examples: [
        {
            line: 'kerfbook lay yard-tag.kerf --set-up 2 --marks "7.3,30.1 73.2,30.4"',
            what: 'for the tag that lies there now',
        },
    ],
    codes: ['1 where nothing was written'],
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
