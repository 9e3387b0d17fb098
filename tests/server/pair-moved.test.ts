import { expect, test } from 'vitest';
import { pairMoved } from '../../server/git/pair-moved';

const lines = (...words: string[]) => words.join('\n');
const pairs = (gone: Record<string, string>, fresh: Record<string, string>) => [
    ...pairMoved(
        Object.entries(gone).map(([name, text]) => ({ name, text })),
        Object.entries(fresh).map(([name, text]) => ({ name, text })),
    ),
];

test('a file that was moved and changed a little is the one that is gone', () => {
    expect(pairs({ 'a.kerf': lines('one', 'two', 'three') }, { 'b/a.kerf': lines('one', '  two', 'four') })).toEqual([
        ['b/a.kerf', 'a.kerf'],
    ]);
});

test('a file that has little in common with it is another', () => {
    expect(pairs({ 'a.kerf': lines('one', 'two', 'three') }, { 'a2.kerf': lines('one', 'x', 'y', 'z') })).toEqual([]);
});

test('of two that are alike each has been one file only, the most alike first', () => {
    const gone = { 'a.kerf': lines('one', 'two', 'three'), 'b.kerf': lines('one', 'two', 'four') };
    const fresh = { 'x.kerf': lines('one', 'two', 'four'), 'y.kerf': lines('one', 'two', 'five') };
    expect(pairs(gone, fresh)).toEqual([
        ['x.kerf', 'b.kerf'],
        ['y.kerf', 'a.kerf'],
    ]);
});
