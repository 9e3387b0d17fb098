import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitCoupon } from '../../shared/burn/fit';
import { guessLaw } from '../../shared/burn/guess';
import { predict } from '../../shared/burn/law';
import { type Given, solveDepth, type Wish } from '../../shared/burn/solve';
import { burn, couponOf, quantity, shed } from './stock';

const law = fitCoupon(
    couponOf([
        burn(0.4, 400, 1, 0.09),
        burn(0.6, 300, 1, 0.21),
        burn(0.8, 250, 1, 0.37),
        burn(0.8, 400, 1, 0.22),
        burn(0.8, 250, 2, 0.72),
    ]),
    shed,
);

describe('settings for a depth', () => {
    it('take several light passes, and give what they say', () => {
        const solution = solveDepth(law, shed, { depth: 0.5 })!;
        expect(solution.reached).toBe(true);
        expect(solution.limits).toEqual([]);
        expect(solution.passes).toBeGreaterThan(1);
        expect(solution.depth.value / solution.passes).toBeLessThanOrEqual(0.26);
        expect(solution.pitch).toBe(0.1);
        expect(solution.depth).toEqual(predict(law, solution));
        expect(Math.abs(solution.depth.value - 0.5)).toBeLessThan(0.01);
    });

    it('are round: whole per cent of power, three digits of speed', () => {
        for (const depth of [0.05, 0.1, 0.3, 0.7, 1.4]) {
            const { powerRatio, speed, passes } = solveDepth(law, shed, { depth })!;
            expect(powerRatio! * 100).toBeCloseTo(Math.round(powerRatio! * 100), 9);
            expect(speed).toBe(Number(speed.toPrecision(3)));
            expect(Number.isInteger(passes)).toBe(true);
        }
    });

    it('spend speed before power: a shallow depth goes at top speed with little power', () => {
        const shallow = solveDepth(law, shed, { depth: 0.03 })!;
        const deep = solveDepth(law, shed, { depth: 0.24 })!;
        expect(shallow.speed).toBeGreaterThan(0.97 * 600);
        expect(shallow.powerRatio).toBeLessThan(0.8);
        expect(deep.powerRatio).toBe(0.8);
    });

    it('go at the pace that is asked for: fewer passes where they are measured, or more and lighter ones', () => {
        const [fast, usual, gentle] = (['fast', undefined, 'gentle'] as const).map(
            (pace) => solveDepth(law, shed, { depth: 0.9, ...(pace !== undefined && { pace }) })!,
        );
        expect([fast!.passes, usual!.passes, gentle!.passes]).toEqual([3, 4, 8]);
        for (const each of [fast, usual, gentle]) expect(each).toMatchObject({ reached: true, limits: [] });
        expect(fast!.dose).toBeLessThanOrEqual(law.range!.high * 1.02);
        const width = ({ depth }: typeof usual & object): number => depth.high - depth.low;
        expect(width(fast!)).toBeLessThan(width(usual!));
        // A guess has measured nothing: no haste there.
        const guess = guessLaw(undefined, shed);
        expect(solveDepth(guess, shed, { depth: 0.9, pace: 'fast' })!.passes).toBe(
            solveDepth(guess, shed, { depth: 0.9 })!.passes,
        );
    });

    it.each([
        [{ power: 30 }],
        [{ speed: 300 }],
        [{ passes: 3 }],
        [{ pitch: 0.08 }],
        [{ power: 30, passes: 2 }],
        [{ speed: 250, passes: 2, pitch: 0.12 }],
        [{ power: 30, speed: 300 }],
    ] as Given[][])('keep what is given: %j', (given) => {
        const solution = solveDepth(law, shed, { depth: 0.5 }, given!)!;
        expect(solution).toMatchObject(given!);
        expect(Math.abs(solution.depth.value - 0.5)).toBeLessThan(given!.speed && given!.power ? 0.11 : 0.03);
    });

    it('only predict when all is given', () => {
        const given = { power: 36, speed: 250, pitch: 0.1, passes: 1 };
        const solution = solveDepth(law, shed, { depth: 1 }, given)!;
        expect(solution).toMatchObject({ ...given, reached: false, limits: ['heavy-pass'] });
        expect(solution.depth).toEqual(predict(law, given));
    });

    it.each([
        [{ depth: 0.5 }, { power: 60 }, 'power-over'],
        [{ depth: 0.5 }, { speed: 900 }, 'speed-over'],
        [{ depth: 0.5 }, { passes: 1 }, 'heavy-pass'],
        [{ depth: 0.5 }, { power: 5, speed: 600, passes: 1 }, 'below-threshold'],
        [{ depth: 500 }, { passes: 1 }, 'speed-under'],
        [{ depth: 500 }, {}, 'heavy-pass'],
        [{ depth: 0.5 }, { passes: 200 }, 'passes-over'],
        [{ depth: 2 }, { passes: 1 }, 'outside-coupon'],
        [{ tone: 0.5 }, { power: 40, speed: 100 }, 'above-threshold'],
    ] as [Wish, Given, string][])('name the limit: %j with %j', (wish, given, limit) => {
        expect(solveDepth(law, shed, wish, given)!.limits).toContain(limit);
    });

    it('stay inside of the machine, and say when the wish is out of reach', () => {
        const solution = solveDepth(law, shed, { depth: 500 })!;
        expect(solution.reached).toBe(false);
        expect(solution.power).toBeLessThanOrEqual(45);
        const weak = { ...shed, leastPower: quantity(10, 'power') };
        const faint = solveDepth(law, weak, { tone: 0.2 })!;
        expect(faint.power).toBeGreaterThanOrEqual(10);
        expect(faint.reached).toBe(false);
    });

    it('say what the machine does not', () => {
        const { power, name, where } = shed;
        const bare = { name, where, power: power! };
        expect(solveDepth(guessLaw(undefined, bare), bare, { depth: 0.3 })!.limits).toEqual(['no-pitch', 'no-top-speed']);
        expect(solveDepth(law, { name, where }, { depth: 0.3 })).toBeUndefined();
        const kept = solveDepth(law, { name, where }, { depth: 0.3 }, { power: 30 })!;
        expect(kept.limits).toContain('no-power');
        expect(kept.powerRatio).toBeUndefined();
        expect(Math.abs(kept.depth.value - 0.3)).toBeLessThan(0.02);
    });
});

describe('the overtravel', () => {
    const short = { ...shed, overtravel: quantity(3, 'length') };
    it('holds a solved speed down to what the head reaches over it, and says so', () => {
        const speed = Math.floor(Math.sqrt(2 * shed.acceleration!.value * 3));
        const solved = solveDepth(guessLaw(undefined, short), short, { depth: 0.1 })!;
        expect(solved.speed).toBeLessThanOrEqual(speed);
        expect(solved.limits).toContain('run-up');
        expect(solved.reached).toBe(true);
    });
    it('does not where there is room enough, where the speed is given, and where it is nothing', () => {
        const wide = { ...shed, overtravel: quantity(500, 'length') };
        const none = { ...shed, overtravel: quantity(0, 'length') };
        const law = guessLaw(undefined, shed);
        for (const laser of [wide, none])
            expect(solveDepth(law, laser, { depth: 0.1 })).toEqual(solveDepth(law, shed, { depth: 0.1 }));
        expect(solveDepth(law, short, { depth: 0.1 }, { speed: 300 })!.speed).toBe(300);
    });
});

describe('settings for a tone', () => {
    it('stay below the threshold in one pass', () => {
        const solution = solveDepth(law, shed, { tone: 0.7 })!;
        expect(solution).toMatchObject({ passes: 1, reached: true, limits: [] });
        expect(solution.tone).toBeCloseTo(0.7, 1);
        expect(solution.depth.value).toBe(0);
        expect(solution.dose).toBeLessThan(law.threshold);
    });
});

describe('any wish and settings', () => {
    const odd = fc.oneof(
        fc.double(),
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.constantFrom(0, -1, 1e308, 1e-308, Number.NaN),
    );
    const given = fc.record({ power: odd, speed: odd, pitch: odd, passes: odd }, { requiredKeys: [] });
    const wish = fc.oneof(
        fc.record({ depth: odd, depthTolerance: odd }),
        fc.record({ tone: odd }),
        fc.record({ depth: odd, sure: odd }),
    );

    it('give finite settings that keep what is given, or nothing', () => {
        fc.assert(
            fc.property(wish, given, odd, odd, odd, (wanted, kept, power, topSpeed, spot) => {
                const laser = {
                    ...shed,
                    power: quantity(power, 'power'),
                    topSpeed: quantity(topSpeed, 'speed'),
                    spot: quantity(spot, 'length'),
                };
                const solution = solveDepth(law, laser, wanted, kept);
                if (solution === undefined) return;
                expect(solution).toMatchObject(kept);
                for (const value of [
                    solution.power,
                    solution.speed,
                    solution.pitch,
                    solution.dose,
                    solution.depth.value,
                    solution.depth.high,
                ])
                    expect(Number.isFinite(value)).toBe(true);
            }),
            { numRuns: 500, seed: 5 },
        );
    });
});
