import { describe, expect, it } from 'vitest';
import type { CodeAction } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { toDiagnostic } from '../../language/diagnostic';
import { lowerFile } from '../../language/lowering/lower-file';
import { textFindings } from '../../language/text-findings';
import { openAt } from './cursor';
import { open, services } from './services';

const shop = 'file:///shop/';

async function actions(marked: string, only?: string[], uri?: string): Promise<{ all: CodeAction[]; text: string; uri: string }> {
    const { document, position } = await openAt(marked, uri);
    const found = await services.lsp.CodeActionProvider!.getCodeActions(document, {
        textDocument: { uri: document.uri.toString() },
        range: { start: position, end: position },
        context: {
            diagnostics: textFindings(document, services).map((finding) => toDiagnostic(finding, document)),
            ...(only && { only }),
        },
    });
    return { all: (found ?? []) as CodeAction[], text: document.textDocument.getText(), uri: document.uri.toString() };
}

async function changed(marked: string, title: RegExp, only?: string[], uri?: string): Promise<string> {
    const { all, text, uri: own } = await actions(marked, only, uri);
    const action = all.find((each) => title.test(each.title));
    expect(action, all.map((each) => each.title).join('\n')).toBeDefined();
    return TextDocument.applyEdits(TextDocument.create(own, 'kerfbook', 0, text), action!.edit!.changes![own]!);
}

describe('converting units', () => {
    it.each([
        ['board b { thickness 12.7<|> mm +- 0.254 mm }', /^Write it as .* in/, 'board b { thickness 0.5 in +- 0.01 in }'],
        ['board b { thickness 1/16<|> in }', /^Write it as .* mm$/, 'board b { thickness 1.5875 mm }'],
        ['board b { thickness 31.75<|> mm }', /^Write it as .* in$/, 'board b { thickness 1 1/4 in }'],
        ['board b { thickness 12 .. 13<|> mm }', /^Write it as .* cm$/, 'board b { thickness 1.2 .. 1.3 cm }'],
        ['board b { thickness 10<|> mm +- 5 % }', /^Write it as .* cm/, 'board b { thickness 1 cm +- 5 % }'],
        ['board b { sheet 254 x 508<|> mm }', /^Write it as .* in$/, 'board b { sheet 10 x 20 in }'],
        ['laser l { top speed 600<|> mm/s }', /^Write it as .* mm\/min$/, 'laser l { top speed 36000 mm/min }'],
    ])('%s', async (text, title, expected) => {
        expect(await changed(text, title)).toBe(expected);
    });

    it('offers only units that such things are measured in, and none for a number of the wrong kind', async () => {
        const offered = async (text: string) =>
            (await actions(text)).all.map(({ title }) => title).filter((title) => title.startsWith('Write it as'));
        expect(await offered('board b { sheet 254 x 508<|> mm }')).toEqual([
            'Write it as 10 x 20 in',
            'Write it as 25.4 x 50.8 cm',
        ]);
        expect(await offered('board b { thickness 2<|> s }')).toEqual([]);
    });

    it('does a whole file at once and leaves other kinds of number alone', async () => {
        const text = 'board b { thickness 25.4<|> mm  moisture 8 % }\nboard c { thickness 2 cm  sheet 254 x 127 mm }\n';
        expect(await changed(text, /^Write all 3 of this file in in$/)).toBe(
            'board b { thickness 1 in  moisture 8 % }\nboard c { thickness 0.7874 in  sheet 10 x 5 in }\n',
        );
    });

    it('is not offered for what has no other unit, or is broken', async () => {
        for (const text of [
            'board b { moisture 8<|> % }',
            'board b { thickness 1/0<|> mm }',
            'board b { thickness 3<|> furlong }',
        ])
            expect((await actions(text, ['refactor.rewrite'])).all).toEqual([]);
    });
});

describe('stock', () => {
    const recipe = 'recipe r {\n  blank b { of b }\n  engrave e on b { depth 1 mm }\n  fill e with slow-<|>epoxy\n}\n';

    it('that is built in becomes stock of the shop', async () => {
        const text = await changed(recipe, /^Make it resin of the shop/, ['refactor.extract']);
        expect(text).toContain('resin shop-slow-epoxy {\n  kind slow-epoxy\n}\n\nrecipe r');
        expect(text).toContain('fill e with shop-slow-epoxy');
        expect(textFindings(await open(text), services).filter(({ rule }) => rule === 'unknown-name')).toHaveLength(1); // board b
    });

    it('moves to the file that is used, with its comment, and is found there', async () => {
        await open('laser shed { beam co2 }\n', `${shop}stock.kerf`);
        const uri = `${shop}moving.kerf`;
        const text =
            'use "stock.kerf"\n\n// bought in May\nboard<|> oak-12 { wood white-oak  thickness 12 mm }\n\nrecipe r {\n  laser shed\n  blank b { of oak-12  size 10 x 10 mm }\n}\n';
        const { all } = await actions(text, ['refactor.move'], uri);
        expect(all.map(({ title }) => title)).toEqual(['Move it to stock.kerf']);
        const changes = all[0]!.edit!.changes!;
        expect(changes[`${shop}stock.kerf`]![0]!.newText).toContain('// bought in May\nboard oak-12 {');
        const plain = text.replace('<|>', '');
        const left = TextDocument.applyEdits(TextDocument.create(uri, 'kerfbook', 0, plain), changes[uri]!);
        expect(left).toBe('use "stock.kerf"\n\nrecipe r {\n  laser shed\n  blank b { of oak-12  size 10 x 10 mm }\n}\n');
        await open(`laser shed { beam co2 }\n${changes[`${shop}stock.kerf`]![0]!.newText}`, `${shop}stock.kerf`);
        const document = await open(left, uri);
        expect(textFindings(document, services).filter(({ severity }) => severity === 'error')).toEqual([]);
        expect(lowerFile(document, services)[0]!.blanks).toHaveLength(1);
    });

    it('stays where its names would be unknown', async () => {
        await open('', `${shop}bare.kerf`);
        const text = 'use "bare.kerf"\nwood own { density 700 kg/m3 }\nboard<|> b { wood own }\n';
        expect((await actions(text, ['refactor.move'], `${shop}stays.kerf`)).all).toEqual([]);
    });
});

describe('source.fixAll', () => {
    it('makes every ready fix at once', async () => {
        const text = await changed(
            '<|>board b { wod black-walnut  thickness 12 mm }\nveneer v { wood sugar-mapel  thickness 1 mm }\n',
            /^Fix all/,
            ['source.fixAll'],
        );
        expect(text).toBe('board b { wood black-walnut  thickness 12 mm }\nveneer v { wood sugar-maple  thickness 1 mm }\n');
    });

    it('has nothing to do in a good file, and is not on the light bulb', async () => {
        expect((await actions('<|>board b { wood black-walnut  thickness 12 mm }', ['source.fixAll'])).all).toEqual([]);
        const { all } = await actions('board b { wood blak-walnut<|>  thickness 12 mm }');
        expect(all.map(({ kind }) => kind)).not.toContain('source.fixAll');
    });
});
