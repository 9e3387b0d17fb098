import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';

interface Mutant {
    readonly start: number;
    readonly end: number;
    readonly text: string;
    readonly line: number;
}

const { drawn, mutantsOf, wilson, withSwitches } = (await import(new URL('../../.config/mutants.mjs', import.meta.url).href)) as {
    drawn<T>(all: readonly T[], count: number, seed: number): T[];
    mutantsOf(file: string, source: string): Mutant[];
    wilson(hits: number, count: number): { low: number; high: number };
    withSwitches(source: string, mutants: readonly (Mutant & { id: number })[]): string;
};

/** The texts that a text becomes. */
function becomes(source: string): string[] {
    return mutantsOf('a.ts', source).map(({ start, end, text }) => source.slice(0, start) + text + source.slice(end));
}

describe('the mutants of a text', () => {
    it.each([
        ['const a = b + 1;', ['const a = (b) - (1);']],
        ['const a = b < c;', ['const a = (b) <= (c);', 'const a = (b) >= (c);']],
        ['const a = b === c && d;', ['const a = (b === c) || (d);', 'const a = (b) !== (c) && d;']],
        ['const a = !b;', ['const a = b;']],
        ['const a = -b;', ['const a = b;']],
        ['const a = b ? 1 : 2;', ['const a = true ? 1 : 2;', 'const a = false ? 1 : 2;']],
        ['if (a) b();', ['if (true) b();', 'if (false) b();']],
        ['i += 2;', ['i -= (2);']],
        ['i++;', ['i--;']],
        ['const a = true;', ['const a = false;']],
        ['const a = b.some(c);', ['const a = b.every(c);']],
        ['const a = b.filter(c);', ['const a = b;']],
        ['const a = b?.filter(c).d;', ['const a = b?.d;']],
        ['const a = b ?? c ?? d;', ['const a = (b ?? c) && (d);', 'const a = (b) && (c) ?? d;']],
        ['function f() { g(); }', ['function f() {}']],
    ])('%s', (source, all) => {
        expect(becomes(source)).toEqual(all);
    });

    it('are none of texts, objects and types', () => {
        for (const source of [
            "const a = 'b' + c;",
            'const a = b.toString();',
            'const a = { b: 1 };',
            'const a = `b`;',
            'type A = B extends true ? 1 : -1;',
            'const a = b as true;',
            "import { a } from './b';",
        ])
            expect(becomes(source), source).toEqual([]);
    });

    it('know their line', () => {
        expect(mutantsOf('a.ts', '/* ü */\nconst a = b * c;\n')).toMatchObject([
            { file: 'a.ts', start: 18, end: 23, text: '(b) / (c)', line: 2 },
        ]);
    });
});

/** Whatever is hard to cut: chains that stop, blocks that return, an operator whose neighbours bind less. */
const SOURCE = `
function sum(rows, least) {
    let total = 0;
    for (let i = 0; i < rows.length; i++) {
        if (!rows[i]?.values.some((value) => value > least && value % 2 === 1)) continue;
        total += (rows[i].weight ?? rows[i].values.length) * Math.max(...rows[i].values, -least);
    }
    return total > 10 ? { total, many: true } : { total, names: rows.map((row) => row?.values.slice(1).length ?? 0) };
}
JSON.stringify(sum([{ values: [1, 3, 4] }, undefined, { values: [7, 2], weight: 0.5 }, { values: [2] }], 1));`;

function outcomeOf(text: string, on: number): { said: unknown; reached: number[] } {
    const kerfMutants = { on, reached: [] as number[] };
    try {
        const said = runInNewContext(text, { kerfMutants }, { timeout: 100 });
        return { said, reached: kerfMutants.reached };
    } catch (error) {
        return { said: (error as Error).message, reached: kerfMutants.reached };
    }
}

describe('all mutants of a text at once', () => {
    const mutants = mutantsOf('a.ts', SOURCE).map((mutant, at) => ({ ...mutant, id: at + 1 }));
    const all = withSwitches(SOURCE, mutants);

    it('sleep', () => {
        expect(outcomeOf(all, 0).said).toBe(outcomeOf(SOURCE, 0).said);
    });

    it('are one at a time what the text would be', () => {
        expect(mutants.length).toBeGreaterThan(25);
        for (const { id, start, end, text } of mutants)
            expect(outcomeOf(all, id).said, text).toBe(outcomeOf(SOURCE.slice(0, start) + text + SOURCE.slice(end), 0).said);
    });

    it('note that they were come by', () => {
        const { reached } = outcomeOf(
            withSwitches('false ? 1 + 1 : 2 * 2;', [
                { ...mutantsOf('a.ts', 'false ? 1 + 1 : 2 * 2;').find(({ text }) => text === '(1) - (1)')!, id: 1 },
                { ...mutantsOf('a.ts', 'false ? 1 + 1 : 2 * 2;').find(({ text }) => text === '(2) / (2)')!, id: 2 },
            ]),
            0,
        );
        expect([reached[1], reached[2]]).toEqual([undefined, 1]);
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
