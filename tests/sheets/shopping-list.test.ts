import { describe, expect, it } from 'vitest';
import type { Plan, Supply } from '../../shared/plan/plan';
import { shoppingList } from '../../shared/sheets/shopping-list';

function listOf(...supplies: Supply[]): string {
    return shoppingList({ supplies, recipe: { make: 1 } } as unknown as Plan).text;
}

describe('shopping list (RFC 4180)', () => {
    it('ends lines with CRLF and doubles quotes', () => {
        const text = listOf({ item: 'a "good" board, oiled', kind: 'board', amount: 2, unit: 'pieces', note: 'two\nlines' });
        expect(text).toBe(
            'item,kind,amount,unit,note,costs,currency\r\n"a ""good"" board, oiled",board,2,pieces,"two\nlines",,\r\n',
        );
    });
    it('keeps what a spreadsheet would run as a formula as text', () => {
        expect(listOf({ item: '=1+1', kind: 'glue', amount: 1, unit: 'g', note: '@x' })).toContain("'=1+1,glue,1,g,'@x");
    });
});
