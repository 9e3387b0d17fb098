import { readFileSync } from 'node:fs';
import { AstUtils, GrammarAST } from 'langium';
import { describe, expect, expectTypeOf, it } from 'vitest';
import type { Laser } from '../../language/generated/ast';
import { Items } from '../../language/lowering/items';
import { allLines, type ChoiceOf, isLine, type KeyOf } from '../../language/vocabulary/lookup';
import { property } from '../../language/vocabulary/property';
import { services } from './services';

const laser = { $type: 'Laser', items: [] } as const;

describe('a word that the vocabulary does not have', () => {
    it('does not compile as the key of a line', () => {
        const items = new Items(laser);
        expect(items.figure('leastpower')).toBeUndefined();
        // @ts-expect-error `leastpwoer` is no line of a laser
        expect(items.figure('leastpwoer')).toBeUndefined();
        // @ts-expect-error a laser has no thickness
        expect(items.figure('thickness')).toBeUndefined();
        // @ts-expect-error the power of a laser is a figure, no count
        expect(items.count('power')).toBeUndefined();
        // @ts-expect-error no block has such a line
        expect(isLine({ key: 'power' }, 'pwoer')).toBe(false);
        // @ts-expect-error there is no block called `Lasre`
        expect(property('Lasre', 'power', 'figure', '', '').block).toBe('Lasre');
    });

    it('does not compile among the words that a line chooses from', () => {
        expectTypeOf<ChoiceOf<'Laser', 'focus'>>().toEqualTypeOf<'driven' | 'by-hand' | 'fixed'>();
        expectTypeOf<KeyOf<'Abrasive'>>().toBeString();
        // @ts-expect-error a focus is never loose
        const choice: ChoiceOf<'Laser', 'focus'> = 'loose';
        expect(choice).toBe('loose');
    });

    it('takes the block from the tree', () => {
        expectTypeOf<ConstructorParameters<typeof Items<'Laser'>>[0]['$type']>().toEqualTypeOf<Laser['$type']>();
    });
});

describe('vocabulary and grammar', () => {
    it('have the same lines', () => {
        const inGrammar = new Set<string>();
        for (const node of AstUtils.streamAllContents(services.Grammar)) {
            if (!GrammarAST.isAssignment(node) || node.feature !== 'key' || node.operator !== '=') continue;
            for (const word of [node.terminal, ...AstUtils.streamAllContents(node.terminal)]) {
                if (GrammarAST.isKeyword(word)) inGrammar.add(word.value);
                const rule = GrammarAST.isRuleCall(word) ? word.rule.ref : undefined;
                const phrase = GrammarAST.isParserRule(rule) ? rule.definition : undefined;
                const words = phrase === undefined ? [] : [...AstUtils.streamAst(phrase).filter(GrammarAST.isKeyword)];
                if (GrammarAST.isGroup(phrase)) inGrammar.add(words.map(({ value }) => value).join(''));
                else for (const { value } of words) inGrammar.add(value);
            }
        }
        const known = new Set(allLines.flatMap(({ key, before }) => [key, before ?? key]));
        const left = [...inGrammar].filter((key) => !known.has(key));
        expect(left).toEqual(['blank']); // `inverse within blank`: no line
        const grammar = readFileSync(new URL('../../language/kerf.langium', import.meta.url), 'utf8');
        const unread = allLines.filter(({ words }) => !words.split(' ').every((word) => grammar.includes(`'${word}'`)));
        expect(unread).toEqual([]);
    });
});
