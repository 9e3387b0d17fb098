import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import type { LangiumDocument } from 'langium';
import { expect, test } from 'vitest';
import { builtInText, builtInUris } from '../../language/built-in';
import { toDiagnostic } from '../../language/diagnostic';
import { editsOf } from '../../language/editing/text-edits';
import { lowerFile } from '../../language/lowering/lower-file';
import { textFindings } from '../../language/text-findings';
import { open, services } from '../language/services';
import { runs } from './texts';

const samples = [
    ...readdirSync('samples')
        .filter((name) => name.endsWith('.kerf'))
        .map((name) => readFileSync(`samples/${name}`, 'utf8')),
    ...builtInUris.filter((uri) => /glues|resins|beams/.test(uri)).map((uri) => builtInText(uri) ?? ''),
];
const sample = fc.constantFrom(...samples);
const words = fc.constantFrom(
    ...[
        'recipe',
        'board',
        '{',
        '}',
        'engrave',
        'depth',
        '0.5',
        'mm',
        '"',
        '/*',
        '*/',
        '//',
        '\n',
        '..',
        '+-',
        ',',
        ':',
        '#a',
        '.b',
        '1/0',
        '1e308',
    ],
    ...[
        'on',
        'x',
        'art',
        'at',
        '%',
        'kind',
        'use',
        'allow',
        'because',
        'a',
        'b',
        '-',
        '§',
        '\r\n',
        '\0',
        '😀',
        '1e999',
        '°',
        'µm',
        'through',
    ],
);

async function holdsUp(text: string): Promise<void> {
    const document = await open(text, 'file:///shop/fuzz.kerf');
    const findings = textFindings(document, services);
    for (const finding of findings) {
        inRange(finding.where, text);
        expect(finding.message).not.toMatch(/undefined|NaN|\[object|ID\b|STRAY|NUMBER|OPEN_/);
        for (const { changes } of finding.fixes)
            for (const change of changes) for (const edit of editsOf(change, text)) inRange(edit, text);
        wellPlaced(toDiagnostic(finding, document), document);
    }
    for (const recipe of lowerFile(document, services)) everyNumberIsFinite(recipe);
}

function inRange({ offset, length }: { offset: number; length: number }, text: string): void {
    expect(offset).toBeGreaterThanOrEqual(0);
    expect(length).toBeGreaterThanOrEqual(0);
    expect(offset + length).toBeLessThanOrEqual(text.length);
}

function wellPlaced({ range }: ReturnType<typeof toDiagnostic>, document: LangiumDocument): void {
    const { lineCount } = document.textDocument;
    for (const { line, character } of [range.start, range.end]) {
        expect(line).toBeLessThan(lineCount);
        expect(Number.isInteger(character)).toBe(true);
    }
}

function everyNumberIsFinite(value: unknown): void {
    if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
    else if (typeof value === 'object' && value !== null) for (const inner of Object.values(value)) everyNumberIsFinite(inner);
}

test('any text gives findings, never a throw', async () => {
    await fc.assert(fc.asyncProperty(fc.string({ maxLength: 400, unit: 'binary' }), holdsUp), { numRuns: runs });
});

test('words of the language in any order give findings, never a throw', async () => {
    const soup = fc.array(words, { maxLength: 120 }).map((parts) => parts.join(' '));
    await fc.assert(fc.asyncProperty(soup, holdsUp), { numRuns: runs });
});

test('a sample cut off anywhere is read as far as it goes', async () => {
    const cut = fc
        .tuple(sample, fc.double({ min: 0, max: 1, noNaN: true }))
        .map(([text, share]) => text.slice(0, Math.floor(text.length * share)));
    await fc.assert(fc.asyncProperty(cut, holdsUp), { numRuns: runs });
});

test('a sample with a piece taken out, doubled or put elsewhere is read around it', async () => {
    const share = fc.double({ min: 0, max: 0.999, noNaN: true });
    const mutated = fc.tuple(sample, share, fc.nat(80), share, fc.nat(2)).map(([text, from, length, to, kind]) => {
        const start = Math.floor(text.length * from);
        const piece = text.slice(start, start + length);
        const without = text.slice(0, start) + text.slice(start + length);
        if (kind === 0) return without;
        const target = Math.floor((kind === 1 ? text : without).length * to);
        const base = kind === 1 ? text : without;
        return base.slice(0, target) + piece + base.slice(target);
    });
    await fc.assert(fc.asyncProperty(mutated, holdsUp), { numRuns: runs });
});

test('a word put anywhere into a sample breaks no more than its line and the braces', async () => {
    const inserted = fc.tuple(sample, words, fc.double({ min: 0, max: 1, noNaN: true })).map(([text, word, share]) => {
        const at = Math.floor(text.length * share);
        return `${text.slice(0, at)} ${word} ${text.slice(at)}`;
    });
    await fc.assert(fc.asyncProperty(inserted, holdsUp), { numRuns: runs });
});

test('deep nesting and long lines end in findings', async () => {
    await holdsUp('{'.repeat(20_000));
    await holdsUp('}'.repeat(20_000));
    await holdsUp('recipe a {'.repeat(3_000));
    await holdsUp(`recipe a { ${'engrave x on y { depth '.repeat(2_000)}`);
    await holdsUp(`board a { thickness ${'9'.repeat(50_000)} mm }`);
    await holdsUp(`recipe a {\n${'  mosture 8 %\n'.repeat(5_000)}}`);
    await holdsUp(`"${'\\'.repeat(20_001)}`);
});
