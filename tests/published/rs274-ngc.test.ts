import { describe, expect, it } from 'vitest';
import { rs274 } from '../../shared/sheets/rs274';
import { hatch } from '../../shared/toolpath/hatch';
import type { MachineJob } from '../../shared/toolpath/job';
import { outlinePaths } from '../../shared/toolpath/outline';
import { readProgram } from '../toolpath/rs274-reader';
import { dish } from '../toolpath/shapes';

/*
 * Kramer, Proctor, Messina, The NIST RS274NGC Interpreter, Version 3, NISTIR 6556, 2000: words, modal groups and the
 * form of a line (details from memory).
 */
const region = dish(40, 30, 20);
const job: MachineJob = {
    work: [
        {
            kind: 'area',
            name: 'pocket',
            hatch: hatch(region, 0.5, 0.4)!,
            bothWays: true,
            power: 20,
            speed: 250,
            passes: 2,
            focus: [0, 0.4],
        },
        { kind: 'path', name: 'outline', paths: outlinePaths(region), power: 5, speed: 60, passes: 1, air: true },
    ],
    motion: { topSpeed: 500, acceleration: 5000 },
    origin: { x: 0, y: 60 },
};
const result = rs274(job, { comments: ['tray'], fullPower: 40, origin: 'X 0 Y 0 is the lower left corner' });
const lines = 'text' in result ? result.text.split('\n').slice(0, -1) : [];

describe('a machine file', () => {
    it('holds comments in brackets, and words of a letter and a plain decimal number', () => {
        expect(lines.length).toBeGreaterThan(100);
        for (const line of lines) {
            expect(line).toMatch(/^(\([\x20-\x27\x2a-\x7e]*\)|[A-Z]-?\d+(\.\d+)?( [A-Z]-?\d+(\.\d+)?)*)$/);
            expect(line.length).toBeLessThanOrEqual(256);
        }
    });

    it('uses only words of the standard, at most one of a modal group on a line', () => {
        const groups = [/G[01](?!\d)/g, /G21/g, /G90/g, /G94/g, /M[35](?!\d)/g, /M[79](?!\d)/g, /M2(?!\d)/g];
        const words = new Set<string>();
        for (const line of lines.filter((each) => !each.startsWith('('))) {
            for (const group of groups) expect(line.match(group)?.length ?? 0).toBeLessThanOrEqual(1);
            for (const word of line.split(' ')) words.add(/^[GM]/.test(word) ? word : word.charAt(0));
        }
        expect([...words].sort()).toEqual(
            ['F', 'G0', 'G1', 'G21', 'G90', 'G94', 'M2', 'M3', 'M5', 'M7', 'M9', 'S', 'X', 'Y', 'Z'].sort(),
        );
    });

    it('sets millimetres, absolute places and feed a minute before anything moves, and ends with M2', () => {
        const first = lines.findIndex((line) => /^(G[01] )?[XYZ]/.test(line));
        for (const word of ['G21', 'G90', 'G94']) expect(lines.indexOf(word)).toBeLessThan(first);
        expect(lines.at(-1)).toBe('M2');
        expect(lines.indexOf('M5')).toBeGreaterThan(first);
    });
});

describe('the reader that the tests stand on', () => {
    it('follows modal words as the standard has them', () => {
        const { moves } = readProgram('G21 G90 G94\nM3 S500\nG0 X1 Y2 (go)\nG1 X3 F600\nY4\nM5\nX0\nM2\n');
        expect(moves).toEqual([
            expect.objectContaining({ rapid: true, x0: 0, y0: 0, x1: 1, y1: 2 }),
            expect.objectContaining({ rapid: false, x0: 1, y0: 2, x1: 3, y1: 2, feed: 600, s: 500 }),
            expect.objectContaining({ rapid: false, x1: 3, y1: 4, s: 500 }),
            expect.objectContaining({ rapid: false, x1: 0, y1: 4, s: 0 }),
        ]);
    });

    it.each([
        ['an exponent', 'G21 G90 G94\nG0 X1e3'],
        ['no number', 'G21 G90 G94\nG0 XNaN'],
        ['a feed without F', 'G21 G90 G94\nG1 X1'],
        ['no units', 'G90 G94\nG0 X1'],
        ['a long line', `(${'y'.repeat(255)})`],
        ['an unknown word', 'G64 P0.1'],
        ['a negative S', 'S-1'],
        ['an open bracket', '(oh'],
    ])('refuses %s', (_, text) => {
        expect(() => readProgram(text)).toThrow();
    });
});
