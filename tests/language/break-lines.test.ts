import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { isReference } from 'langium';
import { beforeAll, describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { longestLine } from '../../language/editing/break-lines';
import type { KerfLexer } from '../../language/parsing/lexer';
import { open, services, start } from './services';

beforeAll(() => start());

const options = { tabSize: 2, insertSpaces: true };

async function format(text: string): Promise<string> {
    const document = await open(text, 'file:///shop/format.kerf');
    const edits = await services.lsp.Formatter!.formatDocument(document, {
        textDocument: { uri: document.uri.toString() },
        options,
    });
    return TextDocument.applyEdits(document.textDocument, edits);
}

/** All that a text says, without where it stands; undefined where it cannot be read. */
function meaning(text: string): string | undefined {
    const { value, lexerErrors, parserErrors } = services.parser.LangiumParser.parse(text);
    if (lexerErrors.length > 0 || parserErrors.length > 0) return undefined;
    return JSON.stringify(value, (key, each: unknown) => {
        if (key.startsWith('$') && key !== '$type' && key !== '$refText') return undefined;
        return isReference(each) ? each.$refText : each;
    });
}

/** The words of a text without its comments, each with whether it began a line. */
function wordsOf(text: string): { word: string; first: boolean }[] {
    const tokens = (services.parser.Lexer as KerfLexer).written(text).filter(({ image }) => !/^\/[/*]/.test(image));
    return tokens.map(({ image, startLine }, index) => ({ word: image, first: startLine !== tokens[index - 1]?.endLine }));
}

const samples = readdirSync('samples')
    .filter((name) => name.endsWith('.kerf'))
    .map((name) => readFileSync(`samples/${name}`, 'utf8'));
const lengths = (text: string) => text.split('\n').map((line) => line.length);

describe('a line that is too long', () => {
    it('is broken from outside in: a recipe of 1,700 letters on one line', async () => {
        const step = (name: string) =>
            `engrave ${name} on tray { circle 20 mm at 50, 40 mm  depth 0.3 mm  allow no-coupon because "It was tried on an offcut of this board." }`;
        const steps = Array.from({ length: 12 }, (_, index) => step(`hollow-${index}`));
        const line = `recipe tray "A tray" { issue 2  laser shed  blank tray { of walnut  size 300 x 200 mm } ${steps.join(' ')} seal tray with shellac }`;
        expect(line.length).toBeGreaterThan(1700);
        const formatted = await format(line);
        const opened = (name: string) =>
            `  engrave ${name} on tray {\n    circle 20 mm at 50, 40 mm\n    depth 0.3 mm\n    allow no-coupon because "It was tried on an offcut of this board."\n  }\n`;
        expect(formatted).toBe(
            `recipe tray "A tray" {\n  issue 2\n  laser shed\n  blank tray { of walnut  size 300 x 200 mm }\n${steps
                .map((_, index) => opened(`hollow-${index}`))
                .join('')}  seal tray with shellac\n}\n`,
        );
        expect(meaning(formatted)).toBe(meaning(line));
        expect(await format(formatted)).toBe(formatted);
    });

    it('goes on in the next before a word or a part that belongs to it', async () => {
        const step = (line: string) => `recipe r {\n  engrave p on t {\n    ${line}\n    depth 1 mm\n  }\n}\n`;
        const picks = Array.from({ length: 40 }, (_, index) => `#feather-${index}`).join(' ');
        const art = await format(step(`art heron ${picks} at 3, 4 mm inverse within grown 6 mm`));
        expect(Math.max(...lengths(art))).toBeLessThanOrEqual(longestLine);
        expect(art).toMatch(/\n {4}art heron #feather-0 .*\n {6}#feather-\d+ /);
        // The clauses change places and the line breaks, at once.
        expect(art).toMatch(/inverse within grown 6 mm at 3, 4 mm\n/);
        expect(await format(art)).toBe(art);

        const places = Array.from({ length: 60 }, (_, index) => `${index}, 20 mm`).join(' and ');
        const grid = `recipe r {\n  places stars on t at ${places}\n}\n`;
        const broken = await format(grid);
        expect(Math.max(...lengths(broken))).toBeLessThanOrEqual(longestLine);
        expect(broken).toMatch(/\n {4}and \d+, 20 mm/);
        expect(meaning(broken)).toBe(meaning(grid));
        expect(await format(broken)).toBe(broken);
    });

    it('stays as it is where it cannot be read, where nothing can go on alone, and while a brace is typed', async () => {
        const text = 'x'.repeat(longestLine);
        const note = `run r 2026-11-20 {\n  note "${text}"\n}\n`;
        expect(await format(note)).toBe(note);
        const wrong = `board a { mosture 8 %  wood oak  caution "${text}" }\n`;
        expect((await format(wrong)).split('\n')).toHaveLength(2);
        const open = `recipe r { engrave p on t { depth 1 mm  allow x because "${text}" }\n`;
        expect((await format(open)).split('\n')).toHaveLength(2);
        const comment = `board a { wood oak } // ${text}\n`;
        expect(await format(comment)).toBe(comment);
    });

    it('breaks only where all of it was chosen, and no brace that is typed moves more than itself', async () => {
        const line = `board a { wood oak  thickness 12 mm  moisture 8 %  sheet 600 x 300 mm  price 48 for 1 sheet  varies 0.2 mm  bought 2026-11-20 }`;
        expect(line.length).toBeGreaterThan(longestLine);
        const document = await open(`${line}\n`, 'file:///shop/format.kerf');
        const textDocument = { uri: document.uri.toString() };
        const range = (from: number, to: number) => ({
            start: { line: 0, character: from },
            end: { line: 0, character: to },
        });
        const { Formatter } = services.lsp;
        const whole = await Formatter!.formatDocumentRange(document, { textDocument, options, range: range(0, line.length) });
        expect(TextDocument.applyEdits(document.textDocument, whole).split('\n')).toHaveLength(10);
        expect(await Formatter!.formatDocumentRange(document, { textDocument, options, range: range(0, 20) })).toEqual([]);
        const typed = { textDocument, options, ch: '}', position: { line: 0, character: line.length } };
        expect(await Formatter!.formatDocumentOnType(document, typed)).toEqual([]);
    });

    it('says the same however lines of the samples were joined, and twice is once', async () => {
        let read = 0;
        let broken = 0;
        const joined = fc.tuple(
            fc.constantFrom(...samples),
            fc.constantFrom(0, 0.1, 0.5),
            fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })),
        );
        await fc.assert(
            fc.asyncProperty(joined, async ([sample, kept, chances]) => {
                const words = wordsOf(sample);
                const text = words
                    .map(
                        ({ word, first }, index) => (index === 0 ? '' : first && chances.next().value < kept ? '\n' : ' ') + word,
                    )
                    .join('');
                const said = meaning(text);
                const once = await format(text);
                if (said !== undefined) {
                    read += 1;
                    broken += Number(Math.max(...lengths(text)) > longestLine);
                    expect(meaning(once)).toBe(said);
                    // What is longer cannot be broken: a text in quotes, or one statement without a word to go on with.
                    const long = once.split('\n').filter((each) => each.length > longestLine);
                    for (const each of long) expect(each).toMatch(/".{30,}"|^\s*\S+( [^{}]*)?( \{)?$/);
                }
                expect(
                    wordsOf(once)
                        .map(({ word }) => word)
                        .sort(),
                ).toEqual(words.map(({ word }) => word).sort());
                expect(await format(once)).toBe(once);
            }),
            { numRuns: 60 },
        );
        expect(read).toBeGreaterThan(10);
        expect(broken).toBeGreaterThan(10);
    });
});
