/**
 * The built-in woods against the tables they come from: movement from Table 13-5, p. 13-16, of the Wood Handbook (FPL-GTR-190,
 * 2010; seen but for those marked), specific gravity at 12 % from Alden, Hardwoods of North America (FPL-GTR-83, 1995, seen),
 * an extract of the Wood Handbook (seen). These rows were copied by the same hand as the stock, so they only hold it against
 * later slips; the outside witness is the shrinkage from green, of another table, further down.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const text = readFileSync(new URL('../../language/stock/woods.kerf', import.meta.url), 'utf8');

function figure(wood: string, key: string): number | undefined {
    const block = new RegExp(`^wood ${wood} \\{[^}]*`, 'm').exec(text)?.[0] ?? '';
    const found = new RegExp(`^  ${key} ([\\d.]+)`, 'm').exec(block)?.[1];
    return found === undefined ? undefined : Number(found);
}

/** kg/m3 with the water in it: 1000 G (1 + x/100) (Wood Handbook, Eq. 4-12). */
const density = (gravity: number): number => 1000 * gravity * 1.12;

type Row = readonly [wood: string, gravity: number, radial: number | undefined, tangential: number];

/** Specific gravity at 12 %, CR and CT. */
const seen: readonly Row[] = [
    ['black-walnut', 0.55, 0.0019, 0.00274],
    ['sugar-maple', 0.63, 0.00165, 0.00353],
    ['black-cherry', 0.5, 0.00126, 0.00248],
    ['red-alder', 0.41, 0.00151, 0.00256],
    ['white-oak', 0.68, 0.0018, 0.00365],
    ['white-ash', 0.6, 0.00169, 0.00274],
    ['yellow-birch', 0.62, 0.00256, 0.00338],
    ['basswood', 0.37, 0.0023, 0.0033],
    ['american-beech', 0.64, 0.0019, 0.00431],
    ['pecan-hickory', 0.66, 0.00169, 0.00315],
];

describe('woods as they were copied from the tables', () => {
    it.each(seen)('%s', (wood, gravity, radial, tangential) => {
        // Stock gives whole kilograms, and movement in per cent for each per cent of moisture.
        expect(Math.abs(figure(wood, 'density')! - density(gravity))).toBeLessThan(1);
        expect(figure(wood, 'radial')).toBe(radial === undefined ? undefined : Number((radial * 100).toFixed(3)));
        expect(figure(wood, 'tangential')).toBe(Number((tangential * 100).toFixed(3)));
    });
});

describe('density (Wood Handbook, p. 4-10, seen)', () => {
    it('white ash at 12 % weighs 678 kg/m3 there, from another specific gravity than the stock’s', () => {
        expect(Math.abs(figure('white-ash', 'density')! / 678 - 1)).toBeLessThan(0.01);
    });
});

/** The two numbers of a range, or one twice. */
function range(wood: string, key: string): readonly [number, number] {
    const block = new RegExp(`^wood ${wood} \\{[^}]*`, 'm').exec(text)?.[0] ?? '';
    const found = new RegExp(`^  ${key} ([\\d.]+)(?: \\.\\. ([\\d.]+))?`, 'm').exec(block);
    return [Number(found?.[1]), Number(found?.[2] ?? found?.[1])];
}

/** Specific gravity on green volume to that at 12 % (Wood Handbook, the text beside Eq. 4-12). */
const dried = (green: number): number => green / (1 - 0.265 * green * (1 - 12 / 30));
const poundPerCubicFoot = 0.45359237 / 0.3048 ** 3;

/**
 * Green volume, and where the same sheet has it the weight in air, pounds a cubic foot: fact sheets of the Forest Products Laboratory
 * after Chudnoff (padauk, wenge, seen), a trade data sheet (purpleheart, seen), a boat builders' copy of the Wood Handbook of 1974
 * (mahogany, seen), Table 5-5b (teak, seen).
 */
describe('density from green volume, and against the weight that the same sheet gives', () => {
    it.each([
        ['african-padauk', [0.55, 0.67], [42, 51]],
        ['wenge', [0.65, 0.78], [50, 60]],
        ['purpleheart', [0.67, 0.67], [52, 52]],
        ['mahogany', [0.45, 0.45], undefined],
        ['teak', [0.55, 0.55], undefined],
    ] as const)('%s', (wood, green, pounds) => {
        const written = range(wood, 'density');
        for (const end of [0, 1] as const) {
            expect(Math.abs(written[end] - density(dried(green[end])))).toBeLessThan(1.5);
            if (pounds !== undefined) expect(Math.abs(written[end] / (pounds[end] * poundPerCubicFoot) - 1)).toBeLessThan(0.04);
        }
    });
    it('western redcedar, 0.32 at 12 % (two copies of the table, seen)', () =>
        expect(Math.abs(figure('western-redcedar', 'density')! - density(0.32))).toBeLessThan(1));
});

/** A trade magazine's guide to telling woods by their pores (seen). Cherry is half ring-porous there, hickory ring-porous: see the stock. */
describe('pores', () => {
    it.each([
        ['ring', ['white-oak', 'red-oak', 'white-ash']],
        ['diffuse', ['basswood', 'red-alder', 'sugar-maple', 'yellow-birch']],
        ['semi-ring', ['black-walnut', 'pecan-hickory']],
    ])('%s', (pores, woods) => {
        for (const wood of woods) expect(text, wood).toMatch(new RegExp(`^wood ${wood} \\{[^}]*?^  pores ${pores}$`, 'm'));
    });
});

/** Green to oven-dry, tangential, per cent (Wood Handbook, Table 4-3, p. 4-6, seen). */
describe('movement against shrinkage: CT is about T over 28.5 % of moisture (sanity rule, computed)', () => {
    it.each([
        ['black-walnut', 7.8],
        ['sugar-maple', 9.9],
        ['black-cherry', 7.1],
        ['red-alder', 7.3],
        ['white-oak', 10.5],
        ['white-ash', 7.8],
        ['yellow-birch', 9.5],
        ['basswood', 9.3],
        ['american-beech', 11.9],
        ['pecan-hickory', 8.9],
        ['eastern-redcedar', 4.7],
    ])('%s', (wood, shrinkage) => {
        expect(Math.abs(figure(wood, 'tangential')! / (shrinkage / 28.5) - 1)).toBeLessThan(0.06);
    });
});
