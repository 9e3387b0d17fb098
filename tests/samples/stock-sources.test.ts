import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const folder = new URL('../../language/stock/', import.meta.url);

describe('woods', () => {
    const text = readFileSync(new URL('woods.kerf', folder), 'utf8');

    it('has densities that follow from the specific gravity in the comment', () => {
        const pairs = [...text.matchAll(/1000 × ([\d.]+)\s+(?:\/\/ )?×\s+(?:\/\/ )?1\.12\.\n {2}density (\d+) kg\/m3/g)];
        expect(pairs.length).toBeGreaterThan(18);
        for (const [, gravity, density] of pairs) expect(Math.abs(1120 * Number(gravity) - Number(density))).toBeLessThan(1);
    });

    it('writes the coefficients of the table as percentages', () => {
        const pairs = [
            ...text.matchAll(/C[RT]\s+(?:\/\/ )?(0\.0\d+)[^\n]*\n(?: {2}\/\/[^\n]*\n)* {2}(?:radial|tangential) ([\d.]+) %/g),
        ];
        expect(pairs.length).toBeGreaterThan(35);
        for (const [, table, written] of pairs) expect(Number(written) / 100).toBeCloseTo(Number(table), 8);
    });
});
