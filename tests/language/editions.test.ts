import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { builtInText, builtInUris } from '../../language/built-in';
import { insertArt } from '../../language/editing/insert-art';
import { upgradeEdits } from '../../language/editing/upgrade';
import { lowerFile } from '../../language/lowering/lower-file';
import { runEdits } from '../../language/run-edits';
import { textFindings } from '../../language/text-findings';
import { open, services } from './services';

const recipe = 'recipe r {\n  issue 2\n  frobnicate 3 mm\n  blank b { of nothing   size 30 x 20 mm }\n}\n';

async function rules(text: string): Promise<string[]> {
    return textFindings(await open(text), services).map(({ rule }) => rule);
}

describe('a file of a later edition', () => {
    const text = `edition 2031\n${recipe}`;

    it('is one finding, whatever else stands in it', async () => {
        const document = await open(text);
        const findings = textFindings(document, services);
        expect(findings.map(({ rule }) => rule)).toEqual(['newer-edition']);
        expect(findings[0]!.message).toContain('edition 2031');
        expect(findings[0]!.where).toMatchObject({ offset: 8, length: 4 });
    });

    it('is read only: nothing is planned from it, and no edit is offered', async () => {
        const document = await open(text);
        const uri = document.uri.toString();
        const textDocument = { uri };
        expect(lowerFile(document, services)).toEqual([]);
        const run = { recipe: 'r', date: '2026-11-20', revision: 2, lines: [], notes: [] };
        expect(runEdits(document, run, services)).toBeUndefined();
        expect(insertArt(document, text.indexOf('frob'), [document.uri], services)).toBeUndefined();
        expect(upgradeEdits(document)).toEqual([]);
        const options = { tabSize: 2, insertSpaces: true };
        expect(await services.lsp.Formatter!.formatDocument(document, { textDocument, options })).toEqual([]);
        const range = { start: document.textDocument.positionAt(0), end: document.textDocument.positionAt(text.length) };
        const context = { diagnostics: document.diagnostics ?? [] };
        expect(await services.lsp.CodeActionProvider!.getCodeActions(document, { textDocument, range, context })).toEqual([]);
        const position = document.textDocument.positionAt(text.indexOf('blank b') + 6);
        const renamed = services.lsp.RenameProvider!.rename(document, { textDocument, position, newName: 'lid' });
        await expect(Promise.resolve(renamed)).rejects.toThrow('later edition');
    });
});

describe('what says no', () => {
    it('is rewritten where it was spelled otherwise before', async () => {
        const text =
            'recipe r {\n  blank b { of oak  backing none }\n  engrave e on b { mirror off  air off }\n  cut c on b { air /* why */ off  air on }\n}\n';
        const document = await open(text);
        const edits = upgradeEdits(document).map(({ offset, length, text: newText }) => ({
            range: { start: document.textDocument.positionAt(offset), end: document.textDocument.positionAt(offset + length) },
            newText,
        }));
        expect(TextDocument.applyEdits(document.textDocument, edits)).toBe(
            'recipe r {\n  blank b { of oak  without backing }\n  engrave e on b { without mirror  without air }\n  cut c on b { without /* why */ air  air on }\n}\n',
        );
    });
});

describe('a file that says its edition', () => {
    it('is read like one that does not', async () => {
        expect(await rules(`edition 2026\n${recipe}`)).toEqual(await rules(recipe));
    });

    it('cannot be of one that never was, nor say it further down', async () => {
        const [finding] = textFindings(await open('edition 1999\n'), services);
        expect(finding).toMatchObject({ rule: 'impossible-value', fixes: [{ title: 'Change to 2026' }] });
        const below = textFindings(await open('shop s { currency EUR  hourly 30 }\nedition 2026\n'), services);
        expect(below.map(({ message }) => message)).toEqual([
            '`edition` stands once, in the first line of a file that says for which edition it is written.',
        ]);
    });
});

describe('a block that is not known', () => {
    it.each([
        'ritual wax for piece {\n  sand piece { take 0.05 mm  grits 180, 240 }\n  finish piece with bench-wax\n  wait 24 h\n}\n',
        'jig x {\n  rows 3\n  pins {\n    at 3\n    depth 5 mm\n  }\n}\n',
        'ritual wax for piece { sand piece { take 0.05 mm }  wait 24 h }\n',
        'press p\n{\n  depth 3 mm\n  engrave a on b { art c }\n}\n',
    ])('is skipped whole with one finding: %j', async (block) => {
        const shop = 'shop s { currency EUR  hourly 30 }\n';
        const document = await open(`${shop}${block}board b { thickness 12 mm  made of plywood }\n`);
        expect(textFindings(document, services).map(({ rule }) => rule)).toEqual(['syntax']);
    });

    it('in a recipe, too', async () => {
        const text =
            'recipe r {\n  make 2\n  list crew {\n    name "x"\n    depth 2 mm\n    engrave a on b { tone 3 % }\n  }\n  wait 2 h\n}\n';
        expect(await rules(text)).toEqual(['syntax']);
        const [lowered] = lowerFile(await open(text), services);
        expect(lowered?.steps.map(({ kind }) => kind)).toEqual(['wait']);
    });
});

describe('words of an earlier edition', () => {
    const before =
        'wood w {\n  colour #aa8866\n  burnt #2a1a12\n}\nabrasive fine { grain 90 um }\nrecipe revision {\n  // revision 3\n  revision 3\n  do "revision 3"\n}\nrun revision 2026-11-20 { revision 3 }\n';

    it('are read, and mean the same', async () => {
        const document = await open(before);
        const unused = new Set(['unused-name']);
        expect(textFindings(document, services).filter(({ rule }) => !unused.has(rule))).toEqual([]);
        const [lowered] = lowerFile(document, services);
        expect([lowered?.revision, lowered?.runs[0]?.revision]).toEqual([3, 3]);
    });

    it('are left as they are by layout, and rewritten by upgrade, names and texts left alone', async () => {
        const document = await open(before);
        const options = { tabSize: 2, insertSpaces: true };
        const layout = await services.lsp.Formatter!.formatDocument(document, {
            textDocument: { uri: document.uri.toString() },
            options,
        });
        expect(layout).toEqual([]);
        const changes = upgradeEdits(document).map(({ offset, length, text }) => ({
            range: {
                start: document.textDocument.positionAt(offset),
                end: document.textDocument.positionAt(offset + length),
            },
            newText: text,
        }));
        expect(TextDocument.applyEdits(document.textDocument, changes)).toBe(
            'wood w {\n  colour #aa8866\n  char #2a1a12\n}\nabrasive fine { particle 90 um }\nrecipe revision {\n  // revision 3\n  issue 3\n  do "revision 3"\n}\nrun revision 2026-11-20 { issue 3 }\n',
        );
    });

    it('stand in nothing that we write', async () => {
        const samples = new URL('../../samples/', import.meta.url);
        const texts = [
            ...readdirSync(samples).flatMap((name) =>
                name.endsWith('.kerf') ? [readFileSync(new URL(name, samples), 'utf8')] : [],
            ),
            ...builtInUris.map((uri) => builtInText(uri)!),
        ];
        for (const text of texts) expect(upgradeEdits(await open(text))).toEqual([]);
    });
});
