import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';

/** How many texts of each kind; `npm run fuzz` sets it higher. Seeds are printed by fast-check when a text fails. */
export const runs = Number(process.env.FUZZ_RUNS ?? 60);
/** How long a test may take (ms) on a machine that has other work. */
export const patience = 120_000 + runs * 1000;

export const samples = readdirSync('samples')
    .filter((name) => name.endsWith('.kerf'))
    .map((name) => ({ name, text: readFileSync(`samples/${name}`, 'utf8') }));

export const pieces = fc.constantFrom(
    ...['recipe', 'board', 'laser', 'engrave', 'blank', 'art', 'fill', 'run', 'without', 'after', 'wait', 'use', 'allow'],
    ...[
        '{',
        '}',
        '"',
        '/*',
        '*/',
        '//',
        '\n',
        '\r\n',
        ' ',
        ',',
        ':',
        '..',
        '+-',
        '#a',
        '.b',
        '0.5',
        '1/16',
        'mm',
        '%',
        'x',
        'at',
    ],
    ...['shed', 'tray', 'pocket', 'walnut-12', 'heron', 'a', '§', '😀', '\t', 'laser loft { }\n', 'blank b { of walnut-12 }\n'],
);

/** One edit of a text, by shares of its length so that it fits any text; a piece is written over what is taken out. */
export interface Edit {
    readonly at: number;
    readonly length: number;
    readonly piece: string;
}

export const edits = fc.record<Edit>({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    length: fc.oneof(fc.constant(0), fc.nat(3), fc.nat(60)),
    piece: fc.oneof(fc.constant(''), pieces, fc.string({ maxLength: 3 })),
});

export function spanOf(edit: Edit, text: string): { start: number; end: number } {
    const start = Math.min(text.length, Math.floor(edit.at * text.length));
    return { start, end: Math.min(text.length, start + edit.length) };
}

export function edited(text: string, edit: Edit): string {
    const { start, end } = spanOf(edit, text);
    return text.slice(0, start) + edit.piece + text.slice(end);
}

/** A sample, whole or after a few edits. */
export const texts = fc
    .tuple(fc.constantFrom(...samples.map(({ text }) => text)), fc.array(edits, { maxLength: 4 }))
    .map(([text, all]) => all.reduce(edited, text));
