/**
 * Abrasive grades: FEPA 43-1 / ISO 6344 medians (the built-in stock) against a rounded list (seen), and CAMI, ANSI B74.18
 * (from memory) against a finishing trade's chart (seen) and a rule of equality (seen). A dictionary of measures (seen) has exact
 * ones from 40 to 120, a guide to grit charts (seen) the coarsest of the fine ones; the digit behind the point of the others is from memory.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { camiGrains, nearestCami } from '../../shared/bench/abrasive-grades';
import { bridge, jumps, sandingSequence, scratchShare, widestJump } from '../../shared/bench/sanding-sequence';

const text = readFileSync(new URL('../../language/stock/abrasives.kerf', import.meta.url), 'utf8');
const fepa = new Map(
    [...text.matchAll(/abrasive (\d+) \{[^}]*?particle ([\d.]+) um/g)].map((match) => [Number(match[1]), Number(match[2])]),
);
const grains = (...grits: number[]): number[] => grits.map((grit) => fepa.get(grit)! / 1000);

describe('FEPA 43-1 medians', () => {
    for (const [grit, rounded] of [
        [80, 200],
        [100, 162],
        [120, 125],
        [150, 100],
        [180, 82],
        [220, 68],
        [240, 60],
        [280, 52],
        [320, 46],
        [360, 40],
        [400, 35],
        [500, 30],
        [600, 26],
        [800, 22],
        [1000, 18],
        [1200, 15],
    ] as const) {
        it(`P${grit} in the rounded list`, () => expect(Math.abs(fepa.get(grit)! - rounded)).toBeLessThanOrEqual(1.5));
    }
});

describe('exact medians', () => {
    it('of a dictionary of measures, 40 to 120', () => {
        for (const [grit, micron] of [
            [40, 425],
            [50, 336],
            [60, 269],
            [80, 201],
            [100, 162],
            [120, 125],
        ] as const)
            expect(fepa.get(grit), `P${grit}`).toBe(micron);
    });
    it('the coarsest of the fine ones has 58.4, says a guide to grit charts', () =>
        expect(Math.abs(fepa.get(240)! - 58.4)).toBeLessThan(0.15));
});

describe('CAMI against FEPA (rule of equality, seen)', () => {
    it('is the same up to 220', () => {
        for (const grit of [80, 100, 120, 150, 180, 220]) {
            expect(Math.abs(camiGrains.get(grit)! / fepa.get(grit)! - 1)).toBeLessThan(0.15);
        }
    });
    it('then 320 is P400, 400 is P800 and 600 is P1200', () => {
        for (const [cami, p] of [
            [320, 400],
            [400, 800],
            [600, 1200],
        ] as const) {
            expect(Math.abs(camiGrains.get(cami)! / fepa.get(p)! - 1)).toBeLessThan(0.06);
            expect(nearestCami(fepa.get(p)! / 1000)).toBe(cami);
        }
    });
    it('lies within two microns of a finishing trade’s chart (seen)', () => {
        const chart = {
            80: 192,
            100: 140,
            120: 116,
            150: 93,
            180: 82,
            220: 68,
            240: 52,
            280: 42,
            320: 35,
            360: 28,
            400: 22,
            500: 18,
            600: 15,
        };
        for (const [grade, micron] of Object.entries(chart))
            expect(Math.abs(camiGrains.get(Number(grade))! - micron), grade).toBeLessThanOrEqual(2);
    });
    it('has no answer for grains it does not reach', () => {
        expect(nearestCami(1.8)).toBeUndefined();
        expect(nearestCami(Number.NaN)).toBeUndefined();
    });
});

describe('sequences: skip one grit at a time (craft guidance, seen; no standard found)', () => {
    it('lets one grit be skipped, all along the stock list', () => {
        const all = [...fepa.keys()].sort((a, b) => a - b);
        for (let i = 0; i + 2 < all.length; i++) {
            // 40 to 60 and 60 to 100 and so on; the coarse end of the list has wider steps.
            expect(jumps(grains(all[i]!, all[i + 2]!)), `${all[i]} to ${all[i + 2]}`).toEqual([]);
        }
    });
    it('speaks up where the next but two would be needed', () => {
        expect(jumps(grains(60, 240))[0]).toMatchObject({ from: 0, to: 1 });
        expect(jumps(grains(80, 150))).toHaveLength(1);
        expect(jumps(grains(120, 220))).toHaveLength(1);
        expect(jumps(grains(120, 180, 240))).toEqual([]);
    });
    it('names grits that close the gap', () => {
        const stock = [...fepa.values()].map((grain) => grain / 1000);
        const [coarse, fine] = grains(60, 240);
        const between = bridge(coarse!, fine!, stock);
        const closed = [coarse!, ...between, fine!];
        expect(jumps(closed)).toEqual([]);
        expect(between).toHaveLength(2);
        expect(bridge(coarse!, fine!, [])).toEqual([]);
        expect(bridge(coarse!, fine!, [coarse!, fine!, coarse! * 2, fine! / 2])).toEqual([]);
        expect(bridge(fine!, coarse!, stock)).toEqual([]);
    });
});

describe('what each grit takes (common practice, no source)', () => {
    it('the first the bulk, each later one the scratches before it', () => {
        const { takes, short } = sandingSequence(grains(120, 180, 240), 0.15);
        expect(takes[1]).toBeCloseTo(0.125 * scratchShare, 9);
        expect(takes[2]).toBeCloseTo(0.082 * scratchShare, 9);
        expect(takes.reduce((sum, take) => sum + take, 0)).toBeCloseTo(0.15, 9);
        expect(short).toBe(0);
    });
    it('says how much is missing', () => {
        expect(sandingSequence(grains(60, 80), 0.05).short).toBeCloseTo(0.269 * scratchShare - 0.05, 9);
        expect(sandingSequence([], 0.1)).toEqual({ takes: [], short: 0 });
    });
    it('the widest jump lies between one grit skipped and two', () => {
        expect(widestJump).toBeGreaterThan(fepa.get(60)! / fepa.get(100)!);
        expect(widestJump).toBeLessThan(fepa.get(120)! / fepa.get(220)!);
    });
});
