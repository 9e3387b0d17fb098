import { short } from '../../language/findings/number-words';
import { blockPhrase } from '../../language/vocabulary/blocks';
import { type Construct, constructs } from '../../language/vocabulary/constructs';
import { earlierForms } from '../../language/vocabulary/editions';
import { joints } from '../../language/vocabulary/joints';
import { allLines, allParts, propertiesOf } from '../../language/vocabulary/lookup';
import type { Measure, Property } from '../../language/vocabulary/property';
import { fromBase } from '../../shared/quantity/quantity';
import { unitNamed, unitsOf } from '../../shared/quantity/units';
import type { SampleUses } from './sample-uses';

const head = `# The language, word by word

Made from the tool's own vocabulary (\`npm run words\`). What a word means where the cursor stands, hover says; what can come next,
completion says. Names are free: every word can be a name where a name stands, but a word that begins a line is a word.

**Order.** Lines of a block may stand in any order; steps of a recipe stand in the order of the work. Inside a line its parts may stand in any order too, behind the first
word and the name; the formatter puts them into the order of the example. **Units** stand behind each number; any unit of the same kind may be written. Outside of the usual range a number is asked about, not refused.

**Texts.** What stands behind \`///\` right above a recipe, a part or step of one, or stock is for others: hover, the job sheet and reviews show it. What
stands behind \`//\` is for you.

**Samples.** Each word names the first file of \`samples/\` that uses it there.
`;

/** The reference of the language for users: every word of the grammar with its block, meaning, unit, range, default, example and sample. */
export function languagePage(uses: SampleUses): string {
    const parts = [
        head,
        ...section('In a file', 'file', uses),
        ...section('In a board or veneer', 'stock', uses),
        ...section('In a recipe', 'recipe', uses),
        line('Recipe', uses),
        ...section('Steps', 'step', uses),
        '## Inside lines\n',
        table(
            ['word', 'in', 'meaning', 'unit', 'usual', 'if left out', 'example', 'sample'],
            [
                ...joints.flatMap(({ type, word, what, otherwise }) =>
                    what === undefined ? [] : [[code(word), type, what, '', '', otherwise, '', named(uses.word(type, word))]],
                ),
                ...allParts.map((each) => [
                    code(each.words),
                    each.block,
                    each.what,
                    units(each),
                    usual(each),
                    each.otherwise,
                    code(each.example),
                    named(uses.part(each.block, each.key)),
                ]),
            ],
        ),
        '## Earlier spellings\n',
        'Read for ever, and rewritten by `kerfbook upgrade`.\n',
        table(
            ['earlier', 'today', 'in'],
            [
                ...allLines.flatMap(({ before, words, block }) =>
                    before === undefined ? [] : [[code(before), code(words), block]],
                ),
                ...earlierForms.map(({ before, now, block }) => [code(before), code(now), block]),
            ],
        ),
    ];
    return `${parts.join('\n').trimEnd()}\n`;
}

function section(title: string, where: Construct['where'], uses: SampleUses): string[] {
    const own = constructs.filter((each) => each.where === where);
    return [
        `## ${title}\n`,
        ...own.map((each) => {
            const sample = uses.word(each.type, each.word);
            const asIn = sample === undefined ? '' : `As in ${code(sample)}.\n\n`;
            return `### ${each.word}\n\n${each.what}\n\n${fenced(each.example)}\n${asIn}${line(each.type, uses)}`;
        }),
    ];
}

function fenced(example: string): string {
    return `\`\`\`kerfbook\n${example}\n\`\`\`\n`;
}

/** The lines that a block can have. */
function line(type: string, uses: SampleUses): string {
    const own = propertiesOf(type);
    if (own.length === 0) return '';
    return `Lines of ${blockPhrase(type)}:\n\n${table(
        ['line', 'meaning', 'unit', 'usual', 'if left out', 'example', 'sample'],
        own.map((each) => [
            code(each.words) + (each.many ? ' (any number)' : ''),
            each.what + choicesOf(each),
            units(each),
            usual(each),
            each.otherwise,
            code(each.example),
            named(uses.line(each.block, each.key)),
        ]),
    )}`;
}

function choicesOf({ choices }: Property): string {
    return choices.length === 0 ? '' : ` One of ${choices.map(code).join(', ')}.`;
}

function units({ measures }: Property): string {
    return measures
        .map(({ dimension }) =>
            unitsOf(dimension)
                .map(({ name }) => name)
                .join(', '),
        )
        .filter((each) => each !== '')
        .join('; ');
}

function usual({ measures, example }: Property): string {
    return measures.flatMap((measure) => range(measure, example)).join('; ');
}

function range({ usual: span, dimension }: Measure, example: string): string[] {
    if (span === undefined) return [];
    const written = example.split(' ').filter((word) => unitNamed(word)?.dimension === dimension);
    const unit = written[0] ?? unitsOf(dimension)[0]?.name;
    const [low, high] = span.map((value) => short(unit === undefined ? value : fromBase(value, unit)));
    return [`${low} .. ${high}${unit === undefined ? '' : ` ${unit}`}`];
}

function named(sample: string | undefined): string {
    return sample === undefined ? '' : code(sample);
}

function code(text: string): string {
    return `\`${text}\``;
}

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
    const row = (cells: readonly string[]): string => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
    return `${[row(heads), row(heads.map(() => '---')), ...rows.map(row)].join('\n')}\n`;
}
