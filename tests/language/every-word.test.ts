import { readdirSync, readFileSync } from 'node:fs';
import { AstUtils, type CstNode, CstUtils, GrammarAST, type LangiumDocument } from 'langium';
import { describe, expect, it } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver';
import { builtInText, builtInUris } from '../../language/built-in';
import { constructs } from '../../language/vocabulary/constructs';
import { propertiesOf } from '../../language/vocabulary/lookup';
import { open, services } from './services';

const samples = new URL('../../samples/', import.meta.url);

/** A block of that kind with these lines in it, and what has to stand around it. */
function block(type: string, lines: string): string {
    if (type === 'Recipe') return `recipe r {\n${lines}\n}`;
    const { word, where } = constructs.find((each) => each.type === type)!;
    const heads: Record<string, string> = {
        Coupon: 'coupon a on b',
        Run: 'run r 2026-11-20',
        Engrave: 'engrave e on b',
        Cut: 'cut e on b',
        Seal: 'seal b with s',
        Fill: 'fill e with r',
        Inlay: 'inlay e into f',
        Wait: 'wait 2 h',
        Finish: 'finish b with f',
        Without: 'without peel b',
        Inserted: 'after peel b',
        Art: 'art a "a.svg"',
        Do: 'do "it"',
        Abrasive: 'abrasive 120',
    };
    const text = `${heads[type] ?? `${word} n`} {\n${lines}\n}`;
    return where === 'file' ? text : `recipe r {\n${text}\n}`;
}

/** Texts in which every word of the grammar stands somewhere. */
const texts = [
    ...readdirSync(samples).flatMap((file) => (file.endsWith('.kerf') ? [readFileSync(new URL(file, samples), 'utf8')] : [])),
    ...builtInUris.map((uri) => builtInText(uri)!),
    ...['Recipe', ...constructs.map(({ type }) => type)]
        .map((type) =>
            block(
                type,
                propertiesOf(type)
                    .map(({ example }) => example)
                    .join('\n'),
            ),
        )
        .filter((text) => !text.includes('use n')),
    block(
        'Engrave',
        'art a inverse within blank\nart a inverse within grown 5 mm turned 90 deg\nart a inverse within rectangle 80 x 40 mm\ndepth through\nscan at 45 deg one way\nscan along grain',
    ),
    block('Blank', 'grain along height\nbacking tape\nbacking none'),
    block('Resin', 'mix 2 : 1 by weight'),
    block('Run', 'e of a 80 % at 250 mm/s x 3 pitch 0.1 mm depth 0.5 mm width 2 mm'),
    block('Recipe', 'do "it" for 5 min'),
    'recipe s based on r {\nbefore peel b {\n}\n}',
];

const grammarWords = new Set(
    AstUtils.streamAllContents(services.Grammar)
        .filter(GrammarAST.isKeyword)
        .map(({ value }) => value)
        .filter((value) => /\p{L}/u.test(value))
        .toArray(),
);

async function said(document: LangiumDocument, node: CstNode): Promise<string> {
    const found = await services.lsp.HoverProvider!.getHoverContent(document, {
        textDocument: { uri: document.uri.toString() },
        position: document.textDocument.positionAt(node.offset),
    });
    return (found?.contents as MarkupContent | undefined)?.value ?? '';
}

describe('every word of the grammar', () => {
    it('is explained wherever it stands', async () => {
        const seen = new Set<string>();
        const silent = new Set<string>();
        for (const text of texts) {
            const document = await open(text);
            for (const leaf of CstUtils.streamCst(document.parseResult.value.$cstNode!)) {
                if (!GrammarAST.isKeyword(leaf.grammarSource) || !/\p{L}/u.test(leaf.text)) continue;
                seen.add(leaf.text);
                if ((await said(document, leaf)) === '') silent.add(`${leaf.text} in ${leaf.astNode.$type}`);
            }
        }
        expect([...grammarWords].filter((word) => !seen.has(word))).toEqual([]);
        expect([...silent]).toEqual([]);
    });
});

describe('every line of a block', () => {
    for (const type of ['Recipe', ...constructs.filter(({ word }) => word !== 'use').map(({ type }) => type)]) {
        if (propertiesOf(type).length === 0) continue;
        it(`of ${type} is proposed where it may stand`, async () => {
            const text = block(type, '<|>');
            const document = await open(text.replace('<|>', ''));
            const list = await services.lsp.CompletionProvider!.getCompletion(document, {
                textDocument: { uri: document.uri.toString() },
                position: document.textDocument.positionAt(text.indexOf('<|>')),
            });
            const proposed = new Map((list?.items ?? []).map((item) => [item.label, item]));
            const missing = propertiesOf(type).filter(({ words }) => !proposed.has(words));
            expect(missing.map(({ words }) => words)).toEqual([]);
            for (const { words, what } of propertiesOf(type)) expect(proposed.get(words)?.detail).toBe(what);
        });
    }
});
