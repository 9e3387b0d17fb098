import { readdirSync, readFileSync } from 'node:fs';
import { AstUtils, type CstNode, CstUtils, GrammarAST, GrammarUtils, type LangiumDocument } from 'langium';
import { describe, expect, it } from 'vitest';
import type { MarkupContent, TextEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { builtInText, builtInUris } from '../../language/built-in';
import { blockHeads, entries, recipeOnly, sharedEntries, steps } from '../../language/parsing/block-words';
import { textFindings } from '../../language/text-findings';
import { constructs } from '../../language/vocabulary/constructs';
import { allLines, propertiesOf } from '../../language/vocabulary/lookup';
import { open, services } from './services';

const samples = new URL('../../samples/', import.meta.url);

/** A block of that kind with these lines in it, and what has to stand around it. */
function block(type: string, lines: string): string {
    if (type === 'Recipe') return `recipe r {\n${lines}\n}`;
    const { word, where } = constructs.find((each) => each.type === type)!;
    const heads: Record<string, string> = {
        Coupon: 'coupon a on b',
        Run: 'run r 2026-11-20',
        Order: 'order 2026-11-20',
        Engrave: 'engrave e on b',
        Cut: 'cut e on b',
        Seal: 'seal b with s',
        Fill: 'fill e with r',
        Inlay: 'inlay e into f',
        Wait: 'wait 2 h',
        Finish: 'finish b with f',
        Without: 'without peel b',
        Inserted: 'after peel b',
        Routine: 'routine n for p',
        Follow: 'follow n on b',
        Art: 'art a "a.svg"',
        Do: 'do "it"',
        Abrasive: 'abrasive 120',
    };
    const text = `${heads[type] ?? `${word} n`} {\n${lines}\n}`;
    if (where === 'stock') return `board b {\n${text}\n}`;
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
        .filter((text) => !/^(?:use|edition) n/.test(text)),
    block(
        'Engrave',
        'art a inverse within blank\nart a inverse within grown 5 mm turned 90 deg\nart a inverse within rectangle 80 x 40 mm\ndepth through sure 99 %\nscan at 45 deg one way\nscan along grain',
    ),
    block('Engrave', 'art a #x, .y but .z'),
    block(
        'Coupon',
        'cut 95 % at 8 mm/s x 2 thickness 5.9 mm gives through kerf 0.18 mm back 0.14 mm\ncut 95 % at 12 mm/s gives skin',
    ),
    block('Recipe', 'sand b called fine { grits 120 }'),
    block('Blank', 'of oak lot spring'),
    block('Blank', 'grain along height\nbacking tape\nbacking none'),
    block('Resin', 'mix 2 : 1 by weight'),
    block('Run', 'e of a lot b 80 % at 250 mm/s x 3 pitch 0.1 mm planned 0.5 mm depth 0.5 mm width 2 mm'),
    block('Run', 'e tone 60 % through yes\nf through no'),
    block('Engrave', 'mirror off\nair off\nscan along outline'),
    'routine n for p {\nfollow m on p\n}',
    block('Recipe', 'places corners on b at 20, 20 mm and 80, 20 mm'),
    block('Engrave', 'circle 5 mm repeat 2 x 3 every 8 x 8 mm'),
    block('Recipe', 'do "it" for 5 min'),
    'recipe s based on r {\nbefore peel b {\n}\n}',
    'edition 2026\nrecipe r { revision 1 }\nwood w { burnt #2a1a12 }\nabrasive 90 { grain 160 um }\n',
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

/** A place where a word of the grammar stands in a text, or where it is used as a value. */
interface Place {
    readonly document: LangiumDocument;
    readonly word: string;
    readonly offset: number;
}

async function* wordsInTexts(): AsyncIterable<Place> {
    for (const text of texts) {
        const document = await open(text);
        for (const leaf of CstUtils.streamCst(document.parseResult.value.$cstNode!)) {
            if (!GrammarAST.isKeyword(leaf.grammarSource) || !/\p{L}/u.test(leaf.text)) continue;
            yield { document, word: leaf.text, offset: leaf.offset };
        }
    }
}

describe('every word of the grammar, too,', () => {
    it('is proposed where it may stand', async () => {
        const earlier = allLines.flatMap(({ before }) => before ?? []);
        const left = new Set(grammarWords);
        for (const word of [...earlier, 'off', 'none']) left.delete(word); // read, and no longer written
        for await (const { document, word, offset } of wordsInTexts()) {
            if (!left.has(word)) continue;
            const text = document.textDocument.getText();
            // As it is typed: the rest of the line is not there yet.
            const end = text.indexOf('\n', offset);
            const typed = await open(`${text.slice(0, offset)}${text.slice(end < 0 ? text.length : end)}`);
            const list = await services.lsp.CompletionProvider!.getCompletion(typed, {
                textDocument: { uri: typed.uri.toString() },
                position: typed.textDocument.positionAt(offset),
            });
            for (const { label } of list?.items ?? []) for (const part of label.split(' ')) left.delete(part);
        }
        expect([...left]).toEqual([]);
    });

    it('is explained with an example, if it begins a line', async () => {
        const bare = new Set<string>();
        for await (const { document, word, offset } of wordsInTexts()) {
            const line = document.textDocument.getText().slice(0, offset).split('\n').at(-1)!;
            if (line.trim() !== '') continue;
            const leaf = CstUtils.findLeafNodeAtOffset(document.parseResult.value.$cstNode!, offset)!;
            if (!/```kerfbook\n.*\b(?:\w|-)/.test(await said(document, leaf))) bare.add(word);
        }
        expect([...bare]).toEqual([]);
    });

    it('is known to the one who looks after braces, if it begins a block', () => {
        const known = new Set([...blockHeads, ...entries, ...recipeOnly, 'without']);
        expect(constructs.map(({ word }) => word).filter((word) => !known.has(word))).toEqual([]);
        const inFile = constructs.filter(({ where }) => where === 'file').map(({ word }) => word);
        expect(inFile.filter((word) => !entries.has(word) && !sharedEntries.has(word))).toEqual([]);
        const inRecipe = constructs.filter(({ where, type }) => where === 'step' && type !== 'Inserted').map(({ word }) => word);
        expect(inRecipe.filter((word) => !steps.has(word) && word !== 'without')).toEqual([]);
    });
});

describe('every example', () => {
    const all = ['Recipe', ...constructs.map(({ type }) => type)].flatMap((type) =>
        propertiesOf(type).map(({ words, example }) => [`${words} of ${type}`, block(type, example)] as const),
    );
    const whole = constructs
        .filter(({ example }) => !/[…]/.test(example))
        .map(
            ({ word, where, example }) =>
                [word, where === 'file' ? example : `${where === 'stock' ? 'board b' : 'recipe r'} {\n${example}\n}`] as const,
        );

    it.each([...all, ...whole])('of %s can be read, and layout keeps it', async (_what, text) => {
        const document = await open(text);
        const findings = textFindings(document, services);
        const wrong = findings.filter(({ rule }) => /syntax|unit|word|impossible|magnitude|reserved/.test(rule));
        expect(wrong.map(({ message }) => message)).toEqual([]);
        const edits = services.lsp.Formatter!.formatDocument(document, {
            textDocument: { uri: document.uri.toString() },
            options: { tabSize: 2, insertSpaces: true },
        });
        const after = TextDocument.applyEdits(document.textDocument, (await edits) as TextEdit[]);
        expect(after.replaceAll(/\s/g, '')).toBe(text.replaceAll(/\s/g, ''));
        expect(textFindings(await open(after, document.uri.toString()), services).map(({ rule }) => rule)).toEqual(
            findings.map(({ rule }) => rule),
        );
    });
});

describe('every name', () => {
    it('is coloured where it is declared and where it is meant', async () => {
        const plain: string[] = [];
        for (const text of texts) {
            const document = await open(text);
            const { data } = await services.lsp.SemanticTokenProvider!.semanticHighlight(document, {
                textDocument: { uri: document.uri.toString() },
            });
            const coloured = new Set<number>();
            for (let [at, line, column] = [0, 0, 0]; at < data.length; at += 5) {
                line += data[at]!;
                column = data[at]! > 0 ? data[at + 1]! : column + data[at + 1]!;
                coloured.add(document.textDocument.offsetAt({ line, character: column }));
            }
            for (const node of AstUtils.streamAst(document.parseResult.value)) {
                const name = GrammarUtils.findNodeForProperty(node.$cstNode, 'name');
                if (name !== undefined && !coloured.has(name.offset)) plain.push(`${name.text} of ${node.$type}`);
            }
            for (const reference of document.references) {
                if (!('ref' in reference) || reference.ref === undefined || reference.$refNode === undefined) continue;
                if (!coloured.has(reference.$refNode.offset))
                    plain.push(`${reference.$refText} in ${reference.$refNode.astNode.$type}`);
            }
        }
        expect(plain).toEqual([]);
    });
});

describe('every line of a block', () => {
    for (const type of ['Recipe', ...constructs.filter(({ word }) => word !== 'use').map(({ type }) => type)]) {
        if (propertiesOf(type).length === 0) continue;
        it(`of ${type} is proposed where it may stand`, async () => {
            // A variant can say all that any recipe can, and leave out lines besides.
            const text = block(type, '<|>').replace('recipe r {', 'recipe r based on s {');
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
