import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const file = new URL('../../extension/language-configuration.json', import.meta.url);
const configuration = JSON.parse(readFileSync(file, 'utf8'));

describe('language configuration', () => {
    test('a word is what a double click should take', () => {
        const words = [...'art heron-2 #body .deep 1/64 in -0.5e3 mm "x"'.matchAll(new RegExp(configuration.wordPattern, 'g'))];
        expect(words.map(([word]) => word)).toEqual(['art', 'heron-2', '#body', '.deep', '1/64', 'in', '-0.5e3', 'mm', 'x']);
    });

    test('a block that stays open indents what follows, a closed one does not', () => {
        const increase = new RegExp(configuration.indentationRules.increaseIndentPattern);
        expect(increase.test('recipe tray "Tray" {')).toBe(true);
        expect(increase.test('  sand tray { flush then 0.1 mm }')).toBe(false);
        expect(increase.test('// a brace in a comment {')).toBe(false);
        expect(new RegExp(configuration.indentationRules.decreaseIndentPattern).test('  }')).toBe(true);
    });
});
