import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { increasing } from '../../shared/review/increasing';

/** Length of a longest increasing run, the slow and plain way. */
function longest(list: readonly number[]): number {
    const best: number[] = [];
    for (const [place, value] of list.entries()) {
        best.push(1 + Math.max(0, ...best.filter((_, before) => before < place && list[before]! < value)));
    }
    return Math.max(0, ...best);
}

describe('what stays in order', () => {
    it('is an increasing run, and none is longer', () => {
        fc.assert(
            fc.property(fc.uniqueArray(fc.nat(60), { maxLength: 25 }), (list) => {
                const places = increasing(list);
                const run = places.map((place) => list[place]!);
                expect(places).toEqual(places.toSorted((a, b) => a - b));
                expect(run).toEqual(run.toSorted((a, b) => a - b));
                expect(run).toHaveLength(longest(list));
            }),
        );
    });
});
