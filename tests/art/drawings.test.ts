import { beforeAll, describe, expect, it } from 'vitest';
import { drawings } from './drawings';
import { areaDifference, compare, witness } from './witness';

/** Where the reader says more than how large the drawing is, which it does rightly. */
const told: Readonly<Record<string, readonly string[]>> = {
    'gradients along a line': ['unsupported linearGradient', 'unsupported linearGradient', 'unsupported linearGradient'],
    'gradients from a point': ['unsupported radialGradient', 'unsupported radialGradient', 'unsupported radialGradient'],
    'a paint that is not there, with something to fall back on': ['unreadable rect', 'unreadable rect'],
};

beforeAll(witness);

describe('what is read looks like what an independent renderer draws', () => {
    for (const [name, svg] of Object.entries(drawings)) {
        it(name, () => {
            const comparison = compare(svg, 800);
            expect(comparison.theirs).toBeGreaterThan(1000);
            expect(areaDifference(comparison)).toBeLessThan(0.005);
            // Edges may fall a fraction of a pixel apart, which tells on thin lines only.
            expect(comparison.different).toBeLessThan(0.008);
            const problems = comparison.art.problems.filter(({ kind }) => kind !== 'unsized' && kind !== 'open-path');
            expect(problems.map(({ kind, subject }) => `${kind} ${subject}`)).toEqual(told[name] ?? []);
        });
    }
});
