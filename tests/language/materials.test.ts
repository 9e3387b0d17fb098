import { describe, expect, it } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { memoryWorkshop } from '../kit/memory-workshop';
import { shop } from '../kit/shop';
import { open, services } from './services';

const text = (sheet: string, blank = '', coat = '') =>
    `${shop}board stuff { wood white-ash thickness 3 mm ${sheet} }\nfinish own { kind drying-oil ${coat} }\nrecipe r "R" { revision 1 laser shed blank b { of stuff size 50 x 40 mm ${blank} } finish b with own }`;

async function lowered(source: string) {
    const kit = await memoryWorkshop({});
    const [recipe] = kit.workshop.recipes(await kit.open(source));
    return recipe!;
}

async function hover(source: string, at: string): Promise<string> {
    const document = await open(source);
    const found = await services.lsp.HoverProvider!.getHoverContent(document, {
        textDocument: { uri: document.uri.toString() },
        position: document.textDocument.positionAt(source.indexOf(at)),
    });
    return (found?.contents as MarkupContent | undefined)?.value ?? '';
}

describe('what a sheet is, and what touches it', () => {
    it('is read, with its place', async () => {
        const source = text('made of plywood treated with paint', 'touched by food');
        const { blanks } = await lowered(source);
        expect(blanks[0]!.sheet).toMatchObject({ madeOf: { value: 'plywood' }, treatedWith: { value: 'paint' } });
        const { offset, length } = blanks[0]!.touchedBy!.where;
        expect(blanks[0]!.touchedBy!.value).toBe('food');
        expect(source.slice(offset, offset + length)).toBe('touched by food');
    });
    it('says which words there are, and offers the one that was meant', async () => {
        const kit = await memoryWorkshop({});
        const found = await kit.findings(text('made of plywod treated with tar', 'touched by foot'));
        const said = found.filter(({ rule }) => rule === 'unknown-word').map(({ message }) => message);
        expect(said).toHaveLength(3);
        expect(said[0]).toContain('`made of` is `solid`, `plywood`');
        expect(said[2]).toContain('`touched by` is `food`, `hands` or `nobody`, not `foot`.');
        expect(found.find(({ message }) => message.includes('plywod'))!.fixes[0]!.title).toBe('Change to `plywood`');
        // What cannot be read is left out.
        expect((await lowered(text('made of plywod'))).blanks[0]!.sheet!.madeOf).toBeUndefined();
    });
    it('needs no wood where it is made of something else', async () => {
        const kit = await memoryWorkshop({});
        const bare = text('').replace('wood white-ash thickness 3 mm', 'thickness 3 mm');
        const missing = async (source: string) =>
            (await kit.findings(source)).filter(({ rule, message }) => rule === 'missing-property' && message.includes('stuff'));
        expect(await missing(bare)).toHaveLength(1);
        expect(await missing(bare.replace('thickness 3 mm', 'thickness 3 mm made of mdf'))).toEqual([]);
    });
    it('can be adjusted in a variant', async () => {
        const source = `${text('', 'touched by nobody')}\nrecipe v "V" based on r { blank b { touched by hands } }`;
        const kit = await memoryWorkshop({});
        const recipes = kit.workshop.recipes(await kit.open(source));
        expect(recipes.map(({ blanks }) => blanks[0]!.touchedBy?.value)).toEqual(['nobody', 'hands']);
    });
});

describe('the words for it', () => {
    const proposed = async (marked: string): Promise<string[]> => {
        const document = await open(marked.replace('<|>', ''));
        const list = await services.lsp.CompletionProvider!.getCompletion(document, {
            textDocument: { uri: document.uri.toString() },
            position: document.textDocument.positionAt(marked.indexOf('<|>')),
        });
        return (list?.items ?? []).map(({ label }) => label);
    };
    it('are offered behind their property', async () => {
        expect(await proposed('board b {\n  made of <|>\n}')).toEqual(expect.arrayContaining(['plywood', 'mdf', 'solid']));
        expect(await proposed('board b {\n  treated with <|>\n}')).toEqual(expect.arrayContaining(['nothing', 'paint']));
        const touched = await proposed('recipe r {\n  blank b {\n    touched by <|>\n  }\n}');
        expect(touched).toEqual(expect.arrayContaining(['food', 'hands', 'nobody']));
        expect(new Set(touched).size).toBe(touched.length);
        expect(await proposed('finish f {\n  rags <|>\n}')).toEqual(expect.arrayContaining(['ignite', 'harmless']));
    });
    it('stay together when the text is laid out', async () => {
        const document = await open('board b{made  of   plywood treated with nothing\n}\nrecipe r{blank c{touched   by  food}}');
        const edits = await services.lsp.Formatter!.formatDocument(document, {
            textDocument: { uri: document.uri.toString() },
            options: { tabSize: 2, insertSpaces: true },
        });
        const laid = TextDocument.applyEdits(document.textDocument, edits);
        expect(laid).toContain('made of plywood  treated with nothing');
        expect(laid).toContain('touched by food');
    });
    it('say what was wanted where a line breaks off', async () => {
        const kit = await memoryWorkshop({});
        const said = async (lines: string) =>
            (await kit.findings(`board b { thickness 3 mm wood white-ash\n${lines}\n}`)).map(({ message }) => message).join('\n');
        expect(await said('made of')).toContain('a word such as `plywood`');
        expect(await said('treated with')).toContain('a word such as `preservative`');
    });
});

describe('what is inherited of a kind', () => {
    it('rags and whose word it is, unless said anew; cautions add up, each once', async () => {
        const coat = async (lines: string) => {
            const [step] = (await lowered(text('', '', lines))).steps;
            return step?.kind === 'finish' ? step.coat! : undefined;
        };
        expect(await coat('food "Paper 7."')).toMatchObject({ rags: 'ignite', food: 'Paper 7.' });
        expect(await coat('rags harmless')).toMatchObject({ rags: 'harmless' });
        const two = `${text('', '', 'caution "Mind the cat."').replace('kind drying-oil', 'kind shelf')}\nfinish shelf { kind shellac-coat caution "Mind the cat." caution "Slippery." }`;
        const [step] = (await lowered(two)).steps;
        expect(step?.kind === 'finish' && step.coat?.cautions).toEqual([
            'Mind the cat.',
            'Slippery.',
            expect.stringContaining('Shellac is dissolved in spirit'),
        ]);
    });
    it('is told on hover, cautions of the kind too', async () => {
        const own = await hover(text('', '', 'caution "Mind the cat."').replace('drying-oil', 'shellac-coat'), 'own {');
        expect(own).toContain('Mind the cat.');
        expect(own).toContain('Like `shellac-coat` where nothing else is written:');
        expect(own).toContain('Shellac is dissolved in spirit');
    });
    it('has a hover on every word', async () => {
        const source = text('made of plywood', 'touched by food', 'rags ignite');
        expect(await hover(source, 'touched by')).toContain('What touches its face in use');
        expect(await hover(source, 'food }')).toContain('What touches its face in use');
        expect(await hover(source, 'made of')).toContain('decides whether it may be burnt');
        expect(await hover(source, 'ignite')).toContain('catch fire by themselves');
    });
});
