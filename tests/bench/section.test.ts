import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossings, inSpans, spanLength } from '../../shared/bench/section';
import { subtract } from '../../shared/geometry/boolean';
import { contains } from '../../shared/geometry/measure';
import { rectangle } from '../../shared/geometry/shapes';

describe('the spans of a line through a region', () => {
    // A frame with two windows, of which one is lower.
    const frame = subtract(subtract(rectangle(0, 0, 90, 40), rectangle(10, 10, 20, 20)), rectangle(50, 20, 30, 10));

    it('are where it is inside, and as long', () => {
        expect(crossings(frame, 5)).toEqual([0, 90]);
        expect(crossings(frame, 15)).toEqual([0, 10, 30, 90]);
        expect(crossings(frame, 25)).toEqual([0, 10, 30, 50, 80, 90]);
        expect(spanLength(crossings(frame, 25))).toBe(40);
        expect(crossings(frame, 45)).toEqual([]);
    });

    it('hold a place exactly where the region does', () => {
        for (const y of [5, 15, 25, 35, 45]) {
            const spans = crossings(frame, y);
            for (let x = -4.5; x < 95; x++) expect(inSpans(spans, x), `${x}, ${y}`).toBe(contains(frame, x, y));
        }
    });

    it('are found in any number of them as by looking at each', () => {
        const bounds = fc.uniqueArray(fc.integer({ min: -1000, max: 1000 }), { maxLength: 60 }).map((places) => {
            const sorted = places.toSorted((a, b) => a - b);
            return sorted.length % 2 === 0 ? sorted : sorted.slice(1);
        });
        fc.assert(
            fc.property(bounds, fc.integer({ min: -1010, max: 1010 }), (spans, x) => {
                const among = spans.some((from, i) => i % 2 === 0 && x >= from && x < spans[i + 1]!);
                expect(inSpans(spans, x)).toBe(among);
                // The bounds themselves: a span holds its beginning and not its end.
                for (const [i, bound] of spans.entries()) expect(inSpans(spans, bound)).toBe(i % 2 === 0);
            }),
            { seed: 14 },
        );
    });
});
