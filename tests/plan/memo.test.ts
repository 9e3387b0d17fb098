import { expect, test } from 'vitest';
import { Memo } from '../../shared/plan/memo';

test('of each stage the latest answers are kept', () => {
    const memo = new Memo(2);
    let worked = 0;
    const ask = (key: string) => memo.get('stage', key, () => ++worked);
    expect([ask('a'), ask('b'), ask('a'), ask('c'), ask('a'), ask('b')]).toEqual([1, 2, 1, 3, 1, 4]);
});

test('what follows from one thing is kept as long as the thing, however many there are', () => {
    const memo = new Memo(2);
    const things = Array.from({ length: 50 }, (_, at) => ({ at }));
    const ask = (thing: { at: number }, stage = 'stage') => memo.getOf(stage, thing, () => ({ of: thing.at, stage }));
    const first = things.map((thing) => ask(thing));
    for (const [at, thing] of things.entries()) expect(ask(thing)).toBe(first[at]);
    expect(ask(things[0]!, 'another')).toEqual({ of: 0, stage: 'another' });
});

test('a job is given up before a stage, and what was not worked out is asked again', () => {
    let stopped = true;
    const memo = new Memo(2, (stage) => {
        if (stopped) throw new Error(stage);
    });
    const thing = {};
    expect(() => memo.getOf('picture', thing, () => 1)).toThrow('picture');
    stopped = false;
    expect(memo.getOf('picture', thing, () => 2)).toBe(2);
});
