import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isWord, readFromBench } from '../../extension/bench/messages';
import { KerfTerminals } from '../../language/generated/ast';
import { namePattern, recipesIn } from '../../shared/recipe/name';

describe('what a name is', () => {
    it('is the same for the grammar and for all else', () => {
        expect(namePattern.source).toBe(KerfTerminals.ID.source);
    });

    it('the bench view takes every name that the language takes, and no other word', () => {
        for (const name of ['vögel', 'größe', 'дом', 'constructor', '__proto__', 'a-1', 'µ', `a${'b'.repeat(300)}`]) {
            expect(readFromBench({ type: 'recipe', name })).toEqual({ type: 'recipe', name });
            expect(readFromBench({ type: 'section', ticket: 1, frame: 0, blank: name, y: 2 })).toMatchObject({ blank: name });
        }
        const language = new RegExp(`^(?:${KerfTerminals.ID.source})$`);
        fc.assert(fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), (text) => isWord(text) === language.test(text)));
        fc.assert(fc.property(fc.stringMatching(language), (text) => isWord(text)));
    });

    it('recipes are found in a text', () => {
        expect(recipesIn('recipe vögel "x" {}\nrecipe\n  constructor {} precipe no')).toEqual(new Set(['vögel', 'constructor']));
    });
});
