import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/** How a comment may say where a figure comes from. */
const provenance = /\b(seen|from memory, unverified|common practice, no source|our own judgement|computed|as [a-z-]+:)/i;

/** Lines of a stock block that state something about the world: all but braces, comments and blank lines. */
function statements(text: string): { line: number; text: string; comment: string }[] {
    const lines = text.split('\n');
    const found: { line: number; text: string; comment: string }[] = [];
    let comment: string[] = [];
    for (const [index, raw] of lines.entries()) {
        const line = raw.trim();
        if (line.startsWith('//')) comment.push(line);
        else if (raw.startsWith('  ') && line !== '}') {
            // `char` belongs to the comment of the `colour` above it.
            if (!line.startsWith('char ')) {
                found.push({ line: index + 1, text: line, comment: comment.join(' ') });
                comment = [];
            }
        } else comment = [];
    }
    return found;
}

const folder = new URL('../../language/stock/', import.meta.url);

describe('every figure of the built-in stock has its source in the comment above it', () => {
    it.each(readdirSync(folder))('%s', (name) => {
        const stated = statements(readFileSync(new URL(name, folder), 'utf8'));
        expect(stated.length).toBeGreaterThan(0);
        const bare = stated.filter(({ comment }) => !provenance.test(comment));
        expect(bare.map(({ line, text }) => `${line}: ${text}`)).toEqual([]);
    });
});

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
