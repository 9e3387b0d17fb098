import { expect, test } from 'vitest';
import { predict } from '../../shared/burn/law';
import { depthLaw } from '../../shared/plan/depth-law';
import { KeptOn, keptFor, nameOf } from '../../shared/plan/kept';
import { Memo } from '../../shared/plan/memo';
import { quantity } from '../burn/stock';
import { planOf } from '../kit/plan-of';
import { inlayRecipe } from '../kit/shop';

test('of each stage the latest answers are kept', () => {
    const memo = new Memo(2);
    let worked = 0;
    const ask = (key: string) => memo.get('stage', key, () => ++worked);
    expect([ask('a'), ask('b'), ask('a'), ask('c'), ask('a'), ask('b')]).toEqual([1, 2, 1, 3, 1, 4]);
});

test('what is kept for one thing is kept as long as the thing, however many things there are', () => {
    const things = Array.from({ length: 500 }, (_, at) => ({ at }));
    const ask = (thing: { at: number }, key = 'picture') => keptFor(thing, key, () => ({ of: thing.at, key }));
    const first = things.map((thing) => ask(thing));
    for (const [at, thing] of things.entries()) expect(ask(thing)).toBe(first[at]);
    expect(ask(things[0]!, 'another')).toEqual({ of: 0, key: 'another' });
});

test('what is kept on a thing is no part of it', () => {
    const kept = new KeptOn<{ at: number }, string | undefined>();
    const thing = { at: 3 };
    let worked = 0;
    const ask = () =>
        kept.getOr(thing, () => {
            worked += 1;
            return undefined;
        });
    expect([ask(), ask(), worked]).toEqual([undefined, undefined, 1]);
    expect(nameOf(thing)).toBe(nameOf(thing));
    expect(nameOf(thing)).not.toBe(nameOf({ at: 3 }));
    expect([JSON.stringify(thing), { ...thing }, structuredClone(thing)]).toEqual(['{"at":3}', { at: 3 }, { at: 3 }]);
    expect(kept.get({ ...thing })).toBeUndefined();
    expect(Object.getOwnPropertySymbols({ ...thing })).toEqual([]);
});

test('a job is given up before a stage, and what was not worked out is asked again', () => {
    let stopped = true;
    const memo = new Memo(2, (stage) => {
        if (stopped) throw new Error(stage);
    });
    expect(() => memo.get('meeting', 'a', () => 1)).toThrow('meeting');
    stopped = false;
    expect(memo.get('meeting', 'a', () => 2)).toBe(2);
});

test('a depth law is worked out again where boards are said to differ otherwise', async () => {
    const { recipe } = await planOf(inlayRecipe());
    const memo = new Memo();
    const widthOf = (varies: number): number => {
        const sheet = { ...recipe.blanks[0]!.sheet!, varies: quantity(varies, 'ratio') };
        const { low, high } = predict(depthLaw(recipe, sheet, memo), { power: 36, speed: 300, pitch: 0.1, passes: 2 })!;
        return high - low;
    };
    expect(widthOf(0.15)).toBeGreaterThan(2 * widthOf(0.02));
});
