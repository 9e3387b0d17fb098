import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, test } from 'vitest';
import { createOnigScanner, createOnigString, loadWASM } from 'vscode-oniguruma';
import { type IGrammar, INITIAL, parseRawGrammar, Registry } from 'vscode-textmate';
import { constructs } from '../../language/vocabulary/constructs';
import { propertiesOf } from '../../language/vocabulary/lookup';

const at = (path: string) => new URL(`../../${path}`, import.meta.url);
const grammarPath = 'extension/kerfbook.tmLanguage.json';
let grammar: IGrammar;

/** The editor's own tokeniser with the editor's own regular expressions. */
beforeAll(async () => {
    const wasm = readFileSync(createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm'));
    await loadWASM({ data: wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) });
    const registry = new Registry({
        onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
        loadGrammar: async () => parseRawGrammar(readFileSync(at(grammarPath), 'utf8'), grammarPath),
    });
    grammar = (await registry.loadGrammar('source.kerfbook'))!;
});

/** The scope of each word of a text, innermost only, without the language's suffix. */
function scopes(text: string): Record<string, string> {
    const found: Record<string, string> = {};
    let state = INITIAL;
    for (const line of text.split('\n')) {
        const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
        state = ruleStack;
        for (const { startIndex, endIndex, scopes: list } of tokens) {
            const word = line.slice(startIndex, endIndex).trim();
            if (word !== '') found[word] = list.at(-1)!.replace(/\.kerfbook$/, '');
        }
    }
    return found;
}

const keywords = [
    ...new Set([...readFileSync(at('language/kerf.langium'), 'utf8').matchAll(/'([a-z][a-z-]*)'/g)].map(([, word]) => word!)),
];

describe('the highlighting grammar', () => {
    test('the language has the words this test means to cover', () => {
        expect(keywords).toEqual(expect.arrayContaining(['recipe', 'engrave', 'because', 'grits', 'narrowest', 'x']));
    });

    test.each(keywords)('knows the word "%s", also on a half-written line', (word) => {
        expect(scopes(`a ${word} b`)[word]).not.toBe('source');
    });

    // Words that begin statements of other kinds as well are coloured as those; what is recognised by its shape is left out.
    const lineWords = [...new Set(constructs.flatMap(({ type }) => propertiesOf(type).map(({ words }) => words.split(' ')[0]!)))];
    test.each(lineWords)('colours "%s" at the start of a line', (word) => {
        expect(scopes(`  ${word} 3`)[word]).toMatch(/^(support\.type|storage|keyword)/);
    });

    test('colours an order and its parts', () => {
        const found = scopes('order 2026-11-24 "the office" {\n  tide-coaster 12 due 2026-12-11\n  delivered 2026-11-26\n}');
        expect(found).toMatchObject({
            order: 'storage.type',
            due: 'keyword.operator.word',
            delivered: 'support.type.property-name',
            '2026-12-11': 'constant.numeric.date',
        });
    });

    test('tells declarations, steps, properties, names, numbers and units apart', () => {
        const found = scopes(
            [
                'recipe heron-tray "Heron serving tray" {',
                '  engrave pocket on tray {',
                '    depth 0.50 mm',
                '    tone 80 %',
                '  }',
                '  inlay relief into hollow { clearance 1/64 in }',
                '  allow not-mirrored because "the leaf is symmetrical"',
                '}',
            ].join('\n'),
        );
        expect(found).toMatchObject({
            recipe: 'storage.type',
            'heron-tray': 'entity.name.type',
            'Heron serving tray': 'string.quoted.double',
            engrave: 'keyword.control.step',
            pocket: 'entity.name.function',
            tray: 'variable.other',
            depth: 'support.type.property-name',
            '0.50': 'constant.numeric',
            mm: 'keyword.other.unit',
            '%': 'keyword.other.unit',
            into: 'keyword.operator.word',
            '1/64': 'constant.numeric',
            in: 'keyword.other.unit',
            'not-mirrored': 'entity.name.tag',
        });
    });

    test('a comment is a comment to its end and no further', () => {
        const found = scopes('engrave a on b { // depth 1 mm\n  passes /* 2 */ 3\n}');
        expect(found['depth 1 mm']).toBe('comment.line.double-slash');
        expect(found['2']).toBe('comment.block');
        expect(found['3']).toBe('constant.numeric');
    });

    test('a string left open ends with its line', () => {
        expect(scopes('art heron "art/her\n  depth 1 mm').depth).toBe('support.type.property-name');
    });

    test('a name that begins with a word of the language is a name', () => {
        expect(scopes('engrave depth-two on cut-board {')).toMatchObject({
            'depth-two': 'entity.name.function',
            'cut-board': 'variable.other',
        });
    });

    test('a day is one word', () => {
        const found = scopes('coupon walnut-12 on shed {\n  burnt 2026-05-02\n  burn 40 % at 400 mm/s gives 0.09 mm\n}');
        expect(found['2026-05-02']).toBe('constant.numeric.date');
        expect(found['0.09']).toBe('constant.numeric');
    });
});
