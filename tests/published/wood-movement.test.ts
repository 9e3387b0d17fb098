/** Movement of wood, D x C x dM: Wood Handbook (FPL-GTR-190, 2010), ch. 13 and Table 13-5, p. 13-16. */
import { describe, expect, it } from 'vitest';
import {
    cupping,
    differentialMovement,
    faceCoefficient,
    movement,
    strainedPart,
    worstMovement,
} from '../../shared/bench/wood-movement';
import type { Quantity } from '../../shared/quantity/quantity';
import { nowhere } from '../../shared/quantity/where';
import type { Wood } from '../../shared/recipe/stock';

const quantity = (value: number): Quantity => ({ value, tolerance: 0, dimension: 'ratio', unit: '%', where: nowhere });
const wood = (name: string, tangential?: number, radial?: number): Wood => ({
    name,
    where: nowhere,
    bleeds: false,
    colour: '#888888',
    burnt: '#222222',
    cautions: [],
    ...(tangential === undefined ? {} : { tangential: quantity(tangential) }),
    ...(radial === undefined ? {} : { radial: quantity(radial) }),
});
const walnut = wood('black-walnut', 0.00274, 0.0019);
const maple = wood('sugar-maple', 0.00353, 0.00165);

describe('published examples', () => {
    it('5 in of mesquite, C 0.00129, from 6 to 9 %: 0.019 in (flooring trade guide, seen)', () => {
        const inches = movement(5, 0.00129, 0.09 - 0.06);
        expect(inches).toBeCloseTo(0.01935, 9);
        expect(inches.toFixed(3)).toBe('0.019');
    });
    it('232 mm of flat-grain white fir, C 0.00245, from 8 to 11 %: 1.705 mm (Wood Handbook ch. 13, from memory)', () => {
        expect(movement(232, 0.00245, 0.03)).toBeCloseTo(1.705, 3);
    });
});

describe('worked examples for boards', () => {
    const alder = wood('red-alder', 0.00256, 0.00151);
    it('8 in of flat-sawn red alder over 6 %: 0.1248 in, with the coefficient rounded to .0026 (a trade magazine, seen)', () => {
        expect(movement(8, 0.0026, 0.06)).toBeCloseTo(0.1248, 9);
        expect(Math.abs(movement(8, faceCoefficient(alder, Math.PI / 2, 'flat')!, 0.06) / 0.1248 - 1)).toBeLessThan(0.02);
    });
    it('13.25 in at 0.2 % a per cent, from 19 to 10 %: 0.2385 in (a university’s exercise, seen)', () =>
        expect(movement(13.25, 0.002, -0.09)).toBeCloseTo(-0.2385, 9));
    it('quarter-sawn it moves 0.59 of that: the handbook’s CR over CT for red alder', () => {
        const across = (sawn: 'quarter' | 'flat') => faceCoefficient(alder, Math.PI / 2, sawn)!;
        expect(across('quarter') / across('flat')).toBeCloseTo(0.00151 / 0.00256, 9);
    });
});

describe('how a board is sawn (Wood Handbook Table 13-5: CR across a quarter-sawn face, CT across a flat-sawn one)', () => {
    const across = (sawn: 'quarter' | 'rift' | 'flat') => movement(100, faceCoefficient(walnut, Math.PI / 2, sawn)!, 0.03);
    it('100 mm of walnut over three per cent: 0.570 mm quarter-sawn, 0.822 mm flat-sawn, half between in rift', () => {
        expect(across('quarter')).toBeCloseTo(0.57, 9);
        expect(across('flat')).toBeCloseTo(0.822, 9);
        expect(across('rift')).toBeCloseTo((0.57 + 0.822) / 2, 9);
    });
    it('flat-sawn maple in quarter-sawn walnut parts twice as far as in flat-sawn walnut', () => {
        const apart = (sawn: 'quarter' | 'flat') =>
            differentialMovement({ wood: walnut, grain: 0, sawn }, { wood: maple, grain: 0 }, { width: 156, height: 156 }, 0.03)!
                .movement;
        expect(apart('flat')).toBeCloseTo(156 * (0.00353 - 0.00274) * 3, 9);
        expect(apart('quarter')).toBeCloseTo(156 * (0.00353 - 0.0019) * 3, 9);
    });
    it('where neither half says how it is sawn, the worst is that of unlike cuts; what is said is kept', () => {
        const most = (board: { sawn?: 'flat' }, half: { sawn?: 'flat' }) =>
            worstMovement(
                { wood: walnut, grain: 0, ...board },
                { wood: maple, grain: 0, ...half },
                { width: 156, height: 156 },
                0.03,
            )!.movement;
        expect(most({}, {})).toBeCloseTo(156 * (0.00353 - 0.0019) * 3, 9);
        expect(most({ sawn: 'flat' }, { sawn: 'flat' })).toBeCloseTo(156 * (0.00353 - 0.00274) * 3, 9);
        expect(most({ sawn: 'flat' }, {})).toBeCloseTo(156 * (0.00274 - 0.00165) * 3, 9);
    });
    it('end grain moves along its face whichever way, most along the rings', () => {
        expect(faceCoefficient(walnut, 0, 'end')).toBeCloseTo(0.00274, 9);
        expect(faceCoefficient(walnut, Math.PI / 2, 'end')).toBeCloseTo(0.00274, 9);
    });
});

describe('computed from the formula', () => {
    it('100 mm of walnut, tangential, three per cent up', () => expect(movement(100, 0.00274, 0.03)).toBeCloseTo(0.822, 9));
    it('shrinks as it dries', () => expect(movement(100, 0.00274, -0.03)).toBeCloseTo(-0.822, 9));
    it('50 mm of maple in walnut, both tangential, three per cent: 0.1185 mm apart', () => {
        const both = differentialMovement(
            { wood: walnut, grain: 0 },
            { wood: maple, grain: 0 },
            { width: 80, height: 50 },
            0.03,
        )!;
        expect(both.movement).toBeCloseTo(0.1185, 9);
        expect(both.direction).toBe('height');
    });
    it('crossed grain parts company by the whole movement of the one that lies across', () => {
        const crossed = differentialMovement(
            { wood: walnut, grain: 0 },
            { wood: walnut, grain: Math.PI / 2 },
            { width: 100, height: 60 },
            0.03,
        )!;
        expect(crossed.movement).toBeCloseTo(0.822, 9);
        expect(crossed.strain).toBeCloseTo(0.00822, 9);
    });
    it('does not move along the grain, and by half in between', () => {
        expect(faceCoefficient(walnut, 0)).toBe(0);
        expect(faceCoefficient(walnut, Math.PI / 2)).toBeCloseTo(0.00274, 9);
        expect(faceCoefficient(walnut, Math.PI / 4)).toBeCloseTo(0.00137, 9);
    });
    it('a wood without figures has no answer; one with radial only uses that', () => {
        expect(
            differentialMovement({ wood: walnut, grain: 0 }, { wood: wood('?'), grain: 0 }, { width: 1, height: 1 }, 0.03),
        ).toBeUndefined();
        expect(faceCoefficient(wood('quartered', undefined, 0.002), Math.PI / 2)).toBeCloseTo(0.002, 9);
        expect(faceCoefficient(undefined, 1)).toBeUndefined();
        expect(faceCoefficient(wood('odd', Number.NaN), 1)).toBeUndefined();
    });
});

describe('a joint, and a face alone', () => {
    it('glued in the middle of the year’s range is strained by half of it, at its ends and outside by all of it', () => {
        const year = { low: 0.062, high: 0.109 };
        expect(strainedPart(0.0855, year)).toBeCloseTo(0.5, 9);
        expect(strainedPart(0.08, year)).toBeCloseTo((0.109 - 0.08) / 0.047, 9);
        expect([0.062, 0.109, 0.15, undefined].map((joined) => strainedPart(joined, year))).toEqual([1, 1, 1, 1]);
    });
    it('bows as an arc does whose back is longer than its face by the strain (computed, no source)', () => {
        // 150 mm of walnut 4 mm thick, its back one per cent damper: an arc of the radius thickness / strain.
        const radius = 4 / (0.00274 * 1);
        const arc = radius * (1 - Math.cos(150 / 2 / radius));
        expect(cupping(150, 4, 0.00274, 0.01) / arc).toBeCloseTo(1, 2);
        expect(cupping(150, 4, 0.00274, 0.01)).toBeCloseTo(1.92656, 5);
    });
});
