import { expect, test } from 'vitest';
import { movedTo } from '../../extension/moved-files';
import { recipeAt } from '../../extension/recipe-at';
import { askedAt, keyOf } from '../../extension/review/asked-page';

const files = [{ oldUri: 'file:///shop/trays', newUri: 'file:///shop/kitchen/trays' }];

test('a file goes with its folder, and one of a like name stays', () => {
    expect(movedTo('file:///shop/trays/heron.kerf', files)).toBe('file:///shop/kitchen/trays/heron.kerf');
    expect(movedTo('file:///shop/trays', files)).toBe('file:///shop/kitchen/trays');
    expect(movedTo('file:///shop/trays-old/heron.kerf', files)).toBe('file:///shop/trays-old/heron.kerf');
});

test('a comparison goes with both of its files', () => {
    const asked = { kind: 'compare', uri: 'file:///shop/trays/a.kerf', before: 'file:///shop/trays/b.kerf' } as const;
    const now = askedAt(asked, (uri) => movedTo(uri, files));
    expect(now).toEqual({
        kind: 'compare',
        uri: 'file:///shop/kitchen/trays/a.kerf',
        before: 'file:///shop/kitchen/trays/b.kerf',
    });
    expect(keyOf(now)).not.toBe(keyOf(asked));
});

test('the recipe whose text a place lies in, up to its last brace, and none between recipes', () => {
    const recipes = [
        { name: 'tray', offset: 10, length: 50 },
        { name: 'lid', offset: 70, length: 30 },
    ];
    expect([0, 10, 60, 65, 70, 100, 101].map((place) => recipeAt(recipes, place))).toEqual([
        undefined,
        'tray',
        'tray',
        undefined,
        'lid',
        'lid',
        undefined,
    ]);
});
