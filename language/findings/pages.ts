import type { Page } from '../../shared/rules/page';

const ours = 'The language itself.';

type Answer = Pick<Page, 'severities' | 'quickFix'>;

const error: Answer = { severities: ['error'] };
const warning: Answer = { severities: ['warning'] };
const hint: Answer = { severities: ['hint'] };

function mendable(answer: Answer, quickFix: Page['quickFix'] = 'always'): Answer {
    return { ...answer, ...(quickFix && { quickFix }) };
}

function page(id: string, answer: Answer, title: string, condition: string, why: string, mend: string): Page {
    return { id, title, ...answer, condition, why, mend, source: ours };
}

/** What is said of the text alone. None of these can be allowed: a text that is not understood is no decision. */
export const textPages: readonly Page[] = [
    page(
        'syntax',
        mendable(error, 'sometimes'),
        'A line that cannot be read',
        'A word, a number or a brace stands where it does not belong, or one is missing.',
        'The line is left out of the recipe. All other lines keep their meaning, so the picture may lack only this one thing.',
        'The message says what comes next; the example in it can be copied.',
    ),
    page(
        'newer-edition',
        error,
        'A file of a later edition',
        'The first line says `edition` with a year that this version does not know.',
        'Words may mean something else there. The file is read only: nothing in it is checked, planned, changed or written.',
        'Update Kerfbook. A file without that line is of edition 2026, whose words are read for ever.',
    ),
    page(
        'unknown-name',
        mendable(error, 'sometimes'),
        'A name that leads nowhere',
        'A board, a blank, a step or another thing is named that is declared neither here, nor in a file that is used, nor in the built-in stock.',
        'Whatever depends on it cannot be worked out.',
        'Correct the spelling, declare it, or write `use "file.kerf"` for the file in which it stands. Where its declaration was mistyped, a fix gives that the name by which it is used.',
    ),
    page(
        'duplicate-name',
        mendable({ severities: ['error', 'warning'] }, 'sometimes'),
        'Two things with one name',
        'Two things of one kind have the same name, in one file, in one recipe, or in two files that are used.',
        'Only one of them can be meant, and it may not be the one you think of.',
        'Give one of them another name; with rename, every place that means it follows.',
    ),
    page(
        'unused-name',
        mendable(hint),
        'A name that nobody uses',
        'Art or a blank is declared and no step uses it, or nothing of a used file is needed.',
        'It does no harm, but it is often what is left of a change that was not finished.',
        'Use it or remove it.',
    ),
    page(
        'based-cycle',
        error,
        'A variant that leads back to itself',
        'A recipe is based on another that, directly or by way of others, is based on it again, or on too long a line of others.',
        'None of them says what the product is.',
        'Let one of them stand by itself and base the others on that one.',
    ),
    page(
        'no-base',
        error,
        'Written like a variant, without a base',
        '`without`, `after`, `before` or a number such as `#2` stands in a recipe, or in a step, that is not based on another.',
        'There is nothing that could be left out or stood beside.',
        'Write `based on` and the name of a recipe behind the title, or write the step itself.',
    ),
    page(
        'not-in-base',
        mendable(error, 'sometimes'),
        'A step that the base does not have',
        'A variant adjusts, leaves out, or stands beside a step, a blank or an exception that its base does not have.',
        'The line has no effect, or stands where nobody expects it.',
        'Correct the name. A step that is new stands in `after … { }` or `before … { }`, so that its place in the order is clear.',
    ),
    page(
        'which-step',
        mendable(error),
        'Several steps that read alike',
        'A variant names a step of its base, and the base has several that are named in the same way.',
        'The first of them is taken, which may not be the one that is meant.',
        'Write `#1`, `#2` … behind the name: `sand tray #2 { grits 240 }`.',
    ),
    page(
        'left-out-needed',
        mendable(error, 'sometimes'),
        'Left out, but still needed',
        'A variant leaves out a step, a blank or art of its base, and keeps a step that builds on it.',
        'That step cannot be done.',
        'Leave it out too, or adjust it so that it builds on something else.',
    ),
    page(
        'use-missing',
        mendable(error, 'sometimes'),
        'A used file is missing',
        '`use` names a file that is not there, cannot be read, or is no recipe file.',
        'Everything that stands in it is unknown here.',
        'The path is counted from the folder of this file, with forward slashes.',
    ),
    page(
        'use-cycle',
        mendable(warning, 'sometimes'),
        'Files that use each other',
        'A file uses another that, directly or by way of others, uses it again.',
        'It works, but neither file can be read or handed on without the other.',
        'Move what both need into a file of its own and let both use that.',
    ),
    page(
        'wrong-unit',
        mendable(error, 'sometimes'),
        'A unit of the wrong kind',
        'The unit measures something else than the line is about, such as a speed where a length is wanted.',
        'The number means nothing there, so the line is left out.',
        'Change the unit. Within a kind, units mix freely: `12 mm` and `1/2 in` can stand side by side.',
    ),
    page(
        'missing-unit',
        mendable(error),
        'A number without its unit',
        'A number that measures something stands without a unit.',
        'Half a workshop thinks in inches and half in millimetres; a bare number has ruined boards.',
        'Write the unit behind the number. Only what is counted, such as passes or coats, has none.',
    ),
    page(
        'unknown-unit',
        mendable(error, 'sometimes'),
        'A unit that is not known',
        'What stands behind the number is no unit of the language.',
        'The number cannot be used.',
        'Units are written in plain letters: `um`, `mm/s2`, `degC`, `J/cm2`, `g/cm3`.',
    ),
    page(
        'unlikely-magnitude',
        mendable(hint, 'sometimes'),
        'An unusual amount',
        'A number is far outside what is usual for that line.',
        'Most often the unit is wrong, or a decimal point is.',
        'If it is right, leave it: this is only a question.',
    ),
    page(
        'impossible-value',
        mendable(error, 'sometimes'),
        'A value that cannot be',
        'A number is negative where it cannot be, divides by zero, is not whole where things are counted, or is beyond all measure; or a colour is not one.',
        'The line is left out.',
        'Write a number within the bounds that the message gives.',
    ),
    page(
        'unknown-word',
        mendable(error, 'sometimes'),
        'A word out of a list',
        'A line takes one of a few words, and another stands there.',
        'The line is left out.',
        'Take one of the words that the message lists.',
    ),
    page(
        'duplicate-property',
        mendable(warning),
        'The same line twice',
        'A block says the same thing twice.',
        'The first one counts; the other looks as if it did.',
        'Remove one of the two.',
    ),
    page(
        'missing-property',
        { severities: ['warning', 'error', 'info', 'hint'] },
        'Something important is not said',
        'A block lacks a line without which little can be worked out: a board its thickness, a blank its size.',
        'What depends on it stays blank in the bench view and on the job sheet.',
        'Add the line that the message names.',
    ),
    page(
        'second-shop',
        warning,
        'Two shops in sight',
        'A file and those it uses hold more than one `shop`.',
        'Wages, currency and prices are those of one shop; the nearest one counts.',
        'Keep one shop in each workshop file, and `use` only the one that makes the piece.',
    ),
    page(
        'price-without-currency',
        { severities: ['info'] },
        'A price in no currency',
        'A price stands as a plain number, and no `shop` in sight says in which currency it is.',
        'It cannot be added up.',
        'Write a `shop` with its `currency`, or the code behind the number: `price 48 EUR for 1 sheet`.',
    ),
    page(
        'other-currency',
        warning,
        'A price in another currency',
        'A price has the code of another currency than the one that the shop reckons in.',
        'Rates change by the day, so nothing is converted: the price is left out of the cost.',
        'Write what was paid in the currency of the shop.',
    ),
    page(
        'kind-cycle',
        error,
        'A kind that leads back to itself',
        'One thing is of the kind of another, and that one, in the end, of the kind of the first.',
        'None of them says the figures that the others rely on.',
        'Let one of them stand on a built-in kind, or write its own figures.',
    ),
    page(
        'unknown-rule',
        mendable(error, 'sometimes'),
        'An exception from no rule',
        '`allow` names a rule that does not exist, or one about the text, which can only be mended.',
        'The exception does nothing, and the next reader believes that it does.',
        'Copy the id from the finding: it stands behind the message.',
    ),
    page(
        'empty-reason',
        warning,
        'An exception without a reason',
        '`because` is followed by an empty text.',
        'In half a year nobody will know why.',
        'Say in a few words why it is right here.',
    ),
];
