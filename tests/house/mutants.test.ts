import { describe, expect, it } from 'vitest';

interface Mutant {
    readonly start: number;
    readonly end: number;
    readonly text: string;
    readonly line: number;
}

const { drawn, mutantsOf, wilson } = (await import(new URL('../../.config/mutants.mjs', import.meta.url).href)) as {
    drawn<T>(all: readonly T[], count: number, seed: number): T[];
    mutantsOf(file: string, source: string): Mutant[];
    wilson(hits: number, count: number): { low: number; high: number };
};

/** The texts that a text becomes. */
function becomes(source: string): string[] {
    return mutantsOf('a.ts', source).map(({ start, end, text }) => source.slice(0, start) + text + source.slice(end));
}

describe('the mutants of a text', () => {
    it.each([
        ['const a = b + 1;', ['const a = b - 1;']],
        ['const a = b < c;', ['const a = b <= c;', 'const a = b >= c;']],
        ['const a = b === c && d;', ['const a = b !== c && d;', 'const a = b === c || d;']],
        ['const a = !b;', ['const a = b;']],
        ['const a = -b;', ['const a = b;']],
        ['const a = b ? 1 : 2;', ['const a = true ? 1 : 2;', 'const a = false ? 1 : 2;']],
        ['if (a) b();', ['if (true) b();', 'if (false) b();']],
        ['i += 2;', ['i -= 2;']],
        ['i++;', ['i--;']],
        ['const a = true;', ['const a = false;']],
        ['const a = b.some(c);', ['const a = b.every(c);']],
        ['const a = b.filter(c);', ['const a = b;']],
        ['function f() { g(); }', ['function f() {}']],
    ])('%s', (source, all) => {
        expect(becomes(source)).toEqual(all);
    });

    it('are none of texts, objects and types', () => {
        for (const source of [
            "const a = 'b' + c;",
            'const a = { b: 1 };',
            'const a = `b`;',
            'type A = B extends true ? 1 : -1;',
            'const a = b as true;',
            "import { a } from './b';",
        ])
            expect(becomes(source), source).toEqual([]);
    });

    it('know their line', () => {
        expect(mutantsOf('a.ts', '/* ü */\nconst a = b * c;\n')).toEqual([
            { file: 'a.ts', start: 20, end: 21, text: '/', line: 2 },
        ]);
    });
});

describe('a sample', () => {
    it('is drawn by its seed, without the same one twice', () => {
        const all = Array.from({ length: 50 }, (_, i) => i);
        expect(drawn(all, 20, 7)).toEqual(drawn(all, 20, 7));
        expect(drawn(all, 20, 7)).not.toEqual(drawn(all, 20, 8));
        expect(new Set(drawn(all, 50, 7)).size).toBe(50);
    });

    it('has the interval of Wilson: Newcombe, Statistics in Medicine 17 (1998), table I (from memory)', () => {
        for (const [hits, count, low, high] of [
            [81, 263, 0.2553, 0.3662],
            [15, 148, 0.0624, 0.1605],
            [0, 20, 0, 0.1611],
            [1, 29, 0.0061, 0.1718],
        ] as const) {
            expect(wilson(hits, count).low).toBeCloseTo(low, 4);
            expect(wilson(hits, count).high).toBeCloseTo(high, 4);
        }
    });
});
