import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { KerfLexer } from '../../language/parsing/lexer';
import { open, services, start } from './services';

beforeAll(() => start());

async function format(text: string, options = { tabSize: 2, insertSpaces: true }): Promise<string> {
    const document = await open(text, 'file:///shop/format.kerf');
    const edits = await services.lsp.Formatter!.formatDocument(document, {
        textDocument: { uri: document.uri.toString() },
        options,
    });
    return TextDocument.applyEdits(document.textDocument, edits);
}

/** All words and comments of a text, without the blanks between them. */
function words(text: string): string[] {
    return (services.parser.Lexer as KerfLexer).written(text).map(({ image }) => image.trimEnd());
}

const samples = readdirSync('samples')
    .filter((name) => name.endsWith('.kerf'))
    .map((name) => readFileSync(`samples/${name}`, 'utf8'));

describe('formatting', () => {
    it('keeps the zero of a laser on its line', async () => {
        expect(await format('laser a {\nzero    lower-right\npower 4 W\n}')).toBe(
            'laser a {\n  zero lower-right\n  power 4 W\n}\n',
        );
    });
    it('indents blocks, sets one blank between words and two between statements on a line', async () => {
        expect(
            await format(`recipe  r{
revision 3   make 4
        blank t{of oak size 300x200mm}


   engrave p on t {

 depth   0.5mm+-0.1mm // deep
   passes 3
}
sand t { grits 120 ,180 }
}`),
        ).toBe(`recipe r {
  revision 3  make 4
  blank t { of oak  size 300 x 200 mm }

  engrave p on t {
    depth 0.5 mm +- 0.1 mm // deep
    passes 3
  }
  sand t { grits 120, 180 }
}
`);
    });
    it('indents what goes on with the line before further in', async () => {
        const text =
            'recipe r {\n  engrave p on t {\n    art heron #wing\n      inverse within circle 3 mm\n      at 3, 4 mm\n    depth 1 mm\n  }\n}\n';
        expect(await format(text.replaceAll(/^ +/gm, ''))).toBe(text);
    });
    it('keeps Windows line breaks, tabs when asked, and the text of comments', async () => {
        expect(await format('board a {\r\n/* x\r\n   y */\r\nthickness 1 mm\r\n}')).toBe(
            'board a {\r\n  /* x\r\n   y */\r\n  thickness 1 mm\r\n}\r\n',
        );
        expect(await format('board a {\nthickness 1 mm\n}\n', { tabSize: 4, insertSpaces: false })).toBe(
            'board a {\n\tthickness 1 mm\n}\n',
        );
    });
    it('leaves a broken line as it is, and all indentation where braces do not pair', async () => {
        const broken = 'board a {\n  mosture    8 %\n  wood   oak\n}\n';
        expect(await format(broken)).toBe('board a {\n  mosture    8 %\n  wood oak\n}\n');
        const open = 'recipe r {\n    engrave p on t {\n      depth 1 mm\n    seal t with   shellac\n}\n';
        expect(await format(open)).toBe(open.replace('   shellac', ' shellac'));
    });
    it('samples are laid out as they are', async () => {
        for (const sample of samples) expect(await format(sample)).toBe(sample);
    });
    it('sorts the clauses of a line, and leaves those around a comment', async () => {
        const step = (line: string) => `recipe r {\n  engrave p on t {\n    ${line}\n    depth 1 mm\n  }\n}\n`;
        const mixed = step('art heron #wing  repeat 2x1 every 30 x 20 mm turned   10 deg at 3,4 mm inverse within grown  6 mm');
        const sorted = step('art heron #wing inverse within grown 6 mm at 3, 4 mm turned 10 deg repeat 2 x 1 every 30 x 20 mm');
        expect(await format(mixed)).toBe(sorted);
        expect(await format(sorted)).toBe(sorted);
        const commented = step('art heron at 3, 4 mm /* why */ inverse within grown 6 mm');
        expect(await format(commented)).toBe(commented);
    });
    it('sorts the parts of a line of a run and of a square of a coupon', async () => {
        const run = (line: string) => `run r 2026-11-20 {\n  ${line}\n  rim through yes\n}\n`;
        const sorted = run('a of oak lot spring 80 % at 250 mm/s x 2 pitch 0.1 mm planned 0.5 mm depth 0.2, 0.48 mm width 3 mm');
        const mixed = run('a of oak lot spring width 3 mm depth 0.2,0.48 mm planned 0.5 mm x 2  pitch 0.1 mm 80 % at 250 mm/s');
        expect(await format(mixed)).toBe(sorted);
        expect(await format(sorted)).toBe(sorted);
        const coupon = (line: string) => `coupon oak on shed {\n  ${line}\n}\n`;
        expect(await format(coupon('burn 40 % gives tone 60 % x 2 at 400 mm/s'))).toBe(
            coupon('burn 40 % at 400 mm/s x 2 gives tone 60 %'),
        );
    });
    it('never loses a word or a comment, and twice is once', async () => {
        const space = fc.constantFrom(' ', '  ', '\n', '\n\n\n', '\t', '\r\n', ' // a\n', ' /* b */ ');
        const cut = fc.tuple(
            fc.constantFrom(...samples),
            fc.nat(),
            fc.nat(200),
            fc.array(fc.tuple(fc.nat(), space), { maxLength: 6 }),
        );
        await fc.assert(
            fc.asyncProperty(cut, async ([sample, at, length, blanks]) => {
                const start = at % sample.length;
                let text = sample.slice(0, start) + sample.slice(start + length);
                for (const [place, blank] of blanks) {
                    const from = text.indexOf(' ', place % text.length);
                    if (from >= 0) text = text.slice(0, from) + blank + text.slice(from + 1);
                }
                const once = await format(text);
                expect(words(once).sort()).toEqual(words(text).sort());
                expect(await format(once)).toBe(once);
            }),
            { numRuns: 60 },
        );
    });
});
