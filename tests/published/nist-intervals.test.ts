import { describe, expect, it } from 'vitest';
import { guessLaw } from '../../shared/burn/guess';
import { type DepthLaw, measuringError, PRIOR_FREEDOM, predictOnBoard } from '../../shared/burn/law';

/*
 * NIST/SEMATECH e-Handbook of Statistical Methods, the pressure/temperature example: 4.5.1.1 (interval of the average response) and 4.5.1.2
 * (of a single one). The line and the value at 65 were read there (www.itl.nist.gov/div898/handbook/pmd/section5/pmd511.htm); residual
 * deviation, standard errors, t and limits are from memory. They hang together: each limit follows from the others.
 */
const line = { intercept: 7.74899, slope: 3.93014 };
const residual = 4.299099;
/** 40 measurements less two parameters. */
const freedom = 38;
const places = [
    { x: 25, value: 106.0025, error: 1.1976162, mean: [103.6, 108.4], single: [97, 115] },
    { x: 45, value: 184.6053, error: 0.6803245, mean: [183.2, 186], single: [175.8, 193.4] },
    { x: 65, value: 263.2081, error: 1.244162, mean: [260.7, 265.7], single: [254.1, 272.3] },
] as const;

/** The variance of a line at three places tells that of its intercept and slope, and how they move together. */
function covarianceOfLine(): { intercept: number; slope: number; both: number } {
    const [low, middle, high] = places.map(({ error }) => error ** 2) as [number, number, number];
    const step = places[1].x - places[0].x;
    const slope = (low - 2 * middle + high) / (2 * step ** 2);
    const both = (high - low - slope * (places[2].x ** 2 - places[0].x ** 2)) / (2 * (places[2].x - places[0].x));
    return { intercept: low - 2 * both * places[0].x - slope * places[0].x ** 2, slope, both };
}

/** The line as a depth law: depth is (dose − threshold) / energy, so that the slope is 1 / energy, and the intercept −threshold / energy. */
function lawAt(x: number): DepthLaw {
    const energy = 1 / line.slope;
    const threshold = -line.intercept / line.slope;
    const of = covarianceOfLine();
    // Slopes of threshold and energy along intercept and slope of the line.
    const [ti, ts, es] = [-energy, -threshold * energy, -(energy ** 2)];
    const tt = ti * ti * of.intercept + 2 * ti * ts * of.both + ts * ts * of.slope;
    const te = ti * es * of.both + ts * es * of.slope;
    const ee = es * es * of.slope;
    const depth = line.intercept + line.slope * x;
    return {
        ...guessLaw(undefined, undefined),
        threshold,
        energy,
        fade: 1,
        covariance: [tt, te, 0, te, ee, 0, 0, 0, 0],
        fadeAssumed: 0,
        measuring: 1,
        variance: (residual / measuringError(depth, 1)) ** 2,
        degreesOfFreedom: freedom - PRIOR_FREEDOM, // the assumed measuring error counts for the rest
        range: { low: 20, high: 70 },
        guess: false,
        notes: [],
    };
}

describe('intervals of the handbook’s pressure/temperature example', () => {
    for (const { x, value, error, mean, single } of places) {
        const settings = { power: x, speed: 1, pitch: 1, passes: 1 };
        const t = 2.024394;

        it(`the average at ${x}, as the mean of a pocket`, () => {
            const range = predictOnBoard(lawAt(x), settings, 'pocket')!;
            expect(range.value).toBeCloseTo(value, 2);
            expect(range.high - range.value).toBeCloseTo(t * error, 4);
            expect([range.low, range.high].map((limit) => Number(limit.toFixed(1)))).toEqual(mean);
        });
        it(`a single value at ${x}, as one more square`, () => {
            const range = predictOnBoard(lawAt(x), settings, 'square')!;
            expect(range.high - range.value).toBeCloseTo(t * Math.hypot(residual, error), 4);
            expect([range.low, range.high].map((limit) => Number(limit.toFixed(1)))).toEqual(single);
        });
    }
    it('read at 65: the line gives 263.21', () => expect(line.intercept + line.slope * 65).toBeCloseTo(263.21, 2));
});
