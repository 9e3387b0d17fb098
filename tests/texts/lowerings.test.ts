import { expect } from 'vitest';
import { eachText } from './cases';

/** The recipe called behind `=== recipe` as plain data; the JSON under it has to be part of it. Numbers have nine digits. */
eachText('lowerings', async ({ text, expected, kit, name }) => {
    const recipes = kit.workshop.recipes(await kit.open(text, name));
    expect(expected).not.toEqual([]);
    for (const { of, lines } of expected) {
        const recipe = recipes.find((each) => each.name === of);
        expect(recipe, `recipe ${of}`).toBeDefined();
        expect(JSON.parse(JSON.stringify(recipe), rounded)).toMatchObject(JSON.parse(lines.join('\n')));
    }
});

function rounded(_key: string, value: unknown): unknown {
    return typeof value === 'number' ? Number(value.toPrecision(9)) : value;
}
