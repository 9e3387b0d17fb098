import { constructs } from '../../language/vocabulary/constructs';
import { joints } from '../../language/vocabulary/joints';
import { allLines, allParts } from '../../language/vocabulary/lookup';
import type { Property } from '../../language/vocabulary/property';
import { unitsOf } from '../../shared/quantity/units';
import { plainJson } from '../../shared/review/one-line';
import { say } from './say';
import { readArgs } from './usage/read-args';
import { vocabularyUsage } from './usage/reference-usages';
import { UsageError } from './usage-error';

/** A word of the language, as data: for programs that write recipes. */
export interface Word {
    readonly word: string;
    /** A statement of its own, a line of a block, or a part of a line. */
    readonly kind: 'statement' | 'line' | 'part';
    /** Where it may stand: `file`, `stock`, `recipe`, `step`, or the block that it is a line or part of. */
    readonly in: string;
    readonly what: string;
    readonly example: string;
    /** Units that its numbers may have, a list for each. */
    readonly units?: readonly (readonly string[])[];
    readonly choices?: readonly string[];
    /** What holds where it is left out. */
    readonly otherwise?: string;
}

/** `kerfbook vocabulary`: every word of the language with its place, meaning, units and an example. */
export async function vocabulary(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(vocabularyUsage, args);
    const words = allWords().filter(({ word }) => positionals.length === 0 || positionals.includes(word));
    if (words.length === 0)
        throw new UsageError(`No word of the language is ${positionals.join(' or ')}. kerfbook vocabulary lists them.`);
    say(values.format === 'json' ? `${plainJson(words)}\n` : words.map(asText).join('\n'));
    return 0;
}

export function allWords(): Word[] {
    return [
        ...constructs.map(({ word, where, what, example }): Word => ({ word, kind: 'statement', in: where, what, example })),
        ...allLines.map((each) => wordOf(each, 'line')),
        ...allParts.map((each) => wordOf(each, 'part')),
        ...joints.flatMap(({ type, word, what, otherwise }): Word[] =>
            what === undefined
                ? []
                : [{ word, kind: 'part', in: type, what, example: '', ...(otherwise === '' ? {} : { otherwise }) }],
        ),
    ];
}

function wordOf({ words, block, what, example, measures, choices, otherwise }: Property, kind: Word['kind']): Word {
    return {
        word: words,
        kind,
        in: block,
        what,
        example,
        ...(measures.length === 0 ? {} : { units: measures.map(({ dimension }) => unitsOf(dimension).map(({ name }) => name)) }),
        ...(choices.length === 0 ? {} : { choices }),
        otherwise,
    };
}

function asText({ word, kind, in: where, what, example, choices, otherwise }: Word): string {
    return [
        `${word} (${kind} in ${where}): ${what}`,
        ...(choices === undefined ? [] : [`  one of ${choices.join(', ')}`]),
        ...(otherwise === undefined || otherwise === '' ? [] : [`  left out: ${otherwise}`]),
        ...(example === '' ? [] : example.split('\n').map((line) => `    ${line}`)),
        '',
    ].join('\n');
}
