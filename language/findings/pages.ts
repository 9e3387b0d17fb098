import type { Page } from '../../shared/rules/page';

const ours = 'The language itself.';

function page(id: string, title: string, condition: string, why: string, mend: string): Page {
    return { id, title, condition, why, mend, source: ours };
}

/** What is said of the text alone. None of these can be allowed: a text that is not understood is no decision. */
export const textPages: readonly Page[] = [
    page(
        'syntax',
        'A line that cannot be read',
        'A word, a number or a brace stands where it does not belong, or one is missing.',
        'The line is left out of the recipe. All other lines keep their meaning, so the picture may lack only this one thing.',
        'The message says what comes next; the example in it can be copied.',
    ),
    page(
        'reserved-name',
        'A word of the language as a name',
        'Something is called by a word with which lines begin or go on, such as `depth` or `grain`.',
        'A reader, and the program, could not tell the name from the word.',
        'Call it something else: `depth-1`, `walnut-grain`. Names are letters, digits, `-` and `_`.',
    ),
    page(
        'unknown-name',
        'A name that leads nowhere',
        'A board, a blank, a step or another thing is named that is declared neither here, nor in a file that is used, nor in the built-in stock.',
        'Whatever depends on it cannot be worked out.',
        'Correct the spelling, declare it, or write `use "file.kerf"` for the file in which it stands.',
    ),
    page(
        'duplicate-name',
        'Two things with one name',
        'Two things of one kind have the same name, in one file, in one recipe, or in two files that are used.',
        'Only one of them can be meant, and it may not be the one you think of.',
        'Give one of them another name; with rename, every place that means it follows.',
    ),
    page(
        'unused-name',
        'A name that nobody uses',
        'Art or a blank is declared and no step uses it, or nothing of a used file is needed.',
        'It does no harm, but it is often what is left of a change that was not finished.',
        'Use it or remove it.',
    ),
    page(
        'use-missing',
        'A used file is missing',
        '`use` names a file that is not there, cannot be read, or is no recipe file.',
        'Everything that stands in it is unknown here.',
        'The path is counted from the folder of this file, with forward slashes.',
    ),
    page(
        'use-cycle',
        'Files that use each other',
        'A file uses another that, directly or by way of others, uses it again.',
        'It works, but neither file can be read or handed on without the other.',
        'Move what both need into a file of its own and let both use that.',
    ),
    page(
        'wrong-unit',
        'A unit of the wrong kind',
        'The unit measures something else than the line is about, such as a speed where a length is wanted.',
        'The number means nothing there, so the line is left out.',
        'Change the unit. Within a kind, units mix freely: `12 mm` and `1/2 in` can stand side by side.',
    ),
    page(
        'missing-unit',
        'A number without its unit',
        'A number that measures something stands without a unit.',
        'Half a workshop thinks in inches and half in millimetres; a bare number has ruined boards.',
        'Write the unit behind the number. Only what is counted, such as passes or coats, has none.',
    ),
    page(
        'unknown-unit',
        'A unit that is not known',
        'What stands behind the number is no unit of the language.',
        'The number cannot be used.',
        'Units are written in plain letters: `um`, `mm/s2`, `degC`, `J/cm2`, `g/cm3`.',
    ),
    page(
        'unlikely-magnitude',
        'An unusual amount',
        'A number is far outside what is usual for that line.',
        'Most often the unit is wrong, or a decimal point is.',
        'If it is right, leave it: this is only a question.',
    ),
    page(
        'impossible-value',
        'A value that cannot be',
        'A number is negative where it cannot be, divides by zero, is not whole where things are counted, or is beyond all measure; or a colour is not one.',
        'The line is left out.',
        'Write a number within the bounds that the message gives.',
    ),
    page(
        'unknown-word',
        'A word out of a list',
        'A line takes one of a few words, and another stands there.',
        'The line is left out.',
        'Take one of the words that the message lists.',
    ),
    page(
        'duplicate-property',
        'The same line twice',
        'A block says the same thing twice.',
        'The first one counts; the other looks as if it did.',
        'Remove one of the two.',
    ),
    page(
        'missing-property',
        'Something important is not said',
        'A block lacks a line without which little can be worked out: a board its thickness, a blank its size.',
        'What depends on it stays blank in the bench view and on the job sheet.',
        'Add the line that the message names.',
    ),
    page(
        'second-shop',
        'Two shops in sight',
        'A file and those it uses hold more than one `shop`.',
        'Wages, currency and prices are those of one shop; the nearest one counts.',
        'Keep one shop in each workshop file, and `use` only the one that makes the piece.',
    ),
    page(
        'price-without-currency',
        'A price in no currency',
        'A price stands as a plain number, and no `shop` in sight says in which currency it is.',
        'It cannot be added up.',
        'Write a `shop` with its `currency`, or the code behind the number: `price 48 EUR for 1 sheet`.',
    ),
    page(
        'other-currency',
        'A price in another currency',
        'A price has the code of another currency than the one that the shop reckons in.',
        'Rates change by the day, so nothing is converted: the price is left out of the cost.',
        'Write what was paid in the currency of the shop.',
    ),
    page(
        'kind-cycle',
        'A kind that leads back to itself',
        'One thing is of the kind of another, and that one, in the end, of the kind of the first.',
        'None of them says the figures that the others rely on.',
        'Let one of them stand on a built-in kind, or write its own figures.',
    ),
    page(
        'unknown-rule',
        'An exception from no rule',
        '`allow` names a rule that does not exist, or one about the text, which can only be mended.',
        'The exception does nothing, and the next reader believes that it does.',
        'Copy the id from the finding: it stands behind the message.',
    ),
    page(
        'empty-reason',
        'An exception without a reason',
        '`because` is followed by an empty text.',
        'In half a year nobody will know why.',
        'Say in a few words why it is right here.',
    ),
];
