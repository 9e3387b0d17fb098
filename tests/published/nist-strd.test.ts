import { describe, expect, it } from 'vitest';
import { fTail } from '../../shared/burn/distributions';
import { lackOfFit } from '../../shared/burn/lack-of-fit';
import { type Fit, leastSquares } from '../../shared/burn/least-squares';
import { type Curve, nonlinearLeastSquares } from '../../shared/burn/nonlinear-least-squares';

/*
 * NIST Statistical Reference Datasets (public domain, www.itl.nist.gov/div898/strd): linear regression Norris,
 * NoInt1 and Pontius, nonlinear regression Misra1a. Certified values, with more digits than certified where the
 * dataset was worked out again in exact rationals. The solvers are those that the coupon fit stands on.
 */

const norris = [
    [0.2, 0.1],
    [337.4, 338.8],
    [118.2, 118.1],
    [884.6, 888],
    [10.1, 9.2],
    [226.5, 228.1],
    [666.3, 668.5],
    [996.3, 998.5],
    [448.6, 449.1],
    [777, 778.9],
    [558.2, 559.2],
    [0.4, 0.3],
    [0.6, 0.1],
    [775.5, 778.1],
    [666.9, 668.8],
    [338, 339.3],
    [447.5, 448.9],
    [11.6, 10.8],
    [556, 557.7],
    [228.1, 228.3],
    [995.8, 998],
    [887.6, 888.8],
    [120.2, 119.6],
    [0.3, 0.3],
    [0.3, 0.6],
    [556.8, 557.6],
    [339.1, 339.3],
    [887.2, 888],
    [999, 998.5],
    [779, 778.9],
    [11.1, 10.2],
    [118.3, 117.6],
    [229.2, 228.9],
    [669.1, 668.4],
    [448.9, 449.2],
    [0.5, 0.2],
];

const pontius = [
    [150000, 0.11019],
    [300000, 0.21956],
    [450000, 0.32949],
    [600000, 0.43899],
    [750000, 0.54803],
    [900000, 0.65694],
    [1050000, 0.76562],
    [1200000, 0.87487],
    [1350000, 0.98292],
    [1500000, 1.09146],
    [1650000, 1.20001],
    [1800000, 1.30822],
    [1950000, 1.41599],
    [2100000, 1.52399],
    [2250000, 1.63194],
    [2400000, 1.73947],
    [2550000, 1.84646],
    [2700000, 1.95392],
    [2850000, 2.06128],
    [3000000, 2.16844],
    [150000, 0.11052],
    [300000, 0.22018],
    [450000, 0.32939],
    [600000, 0.43886],
    [750000, 0.54798],
    [900000, 0.65739],
    [1050000, 0.76596],
    [1200000, 0.87474],
    [1350000, 0.983],
    [1500000, 1.0915],
    [1650000, 1.20004],
    [1800000, 1.30818],
    [1950000, 1.41613],
    [2100000, 1.52408],
    [2250000, 1.63159],
    [2400000, 1.73965],
    [2550000, 1.84696],
    [2700000, 1.95445],
    [2850000, 2.06177],
    [3000000, 2.16829],
];

const misra1a = [
    [77.6, 10.07],
    [114.9, 14.73],
    [141.1, 17.94],
    [190.8, 23.93],
    [239.9, 29.61],
    [289, 35.18],
    [332.8, 40.02],
    [378.4, 44.82],
    [434.8, 50.76],
    [477.3, 55.05],
    [536.8, 61.01],
    [593.1, 66.4],
    [689.1, 75.47],
    [760, 81.78],
];

// x = 60 to 70, y = x + 70
const noInt1 = Array.from({ length: 11 }, (_, i) => [60 + i, 130 + i]);

/** log10 of the relative error, with the sign turned: how many digits agree. */
function digits(value: number | undefined, certified: number): number {
    if (value === undefined || Number.isNaN(value)) return 0;
    return value === certified ? 16 : -Math.log10(Math.abs(value - certified) / Math.abs(certified));
}

function line(data: readonly (readonly number[])[], row: (x: number) => number[]): Fit {
    const fit = leastSquares(
        data.map(([x]) => row(x!)),
        data.map(([, y]) => y!),
    );
    expect(fit).toBeDefined();
    return fit!;
}

function expectDigits(values: readonly (number | undefined)[], certified: readonly number[], least: number): void {
    expect(values.length).toBe(certified.length);
    values.forEach((value, i) => {
        expect(digits(value, certified[i]!), `${value} against ${certified[i]}`).toBeGreaterThanOrEqual(least);
    });
}

describe('linear regression', () => {
    it('agrees with Norris to nine digits', () => {
        const fit = line(norris, (x) => [1, x]);
        expectDigits(fit.parameters, [-0.262323073774029, 1.00211681802045], 9);
        expectDigits(fit.errors ?? [], [0.232818234301152, 0.000429796848199937], 9);
        expectDigits([Math.sqrt(fit.variance!), fit.residualSum], [0.884796396144373, 26.6173985294224], 9);
        expect(fit.degreesOfFreedom).toBe(34);
    });

    it('agrees with NoInt1 to nine digits', () => {
        const fit = line(noInt1, (x) => [x]);
        expectDigits(fit.parameters, [2.07438016528926], 9);
        expectDigits(fit.errors ?? [], [0.0165289256198347], 9);
        expectDigits([Math.sqrt(fit.variance!), fit.residualSum], [3.56753034006338, 127.272727272727], 9);
    });

    it('agrees with Pontius to nine digits', () => {
        const fit = line(pontius, (x) => [1, x, x * x]);
        expectDigits(fit.parameters, [0.673565789473684e-3, 0.732059160401003e-6, -0.316081871345029e-14], 9);
        expectDigits(fit.errors ?? [], [0.107938612033077e-3, 0.157817399981659e-9, 0.486652849992036e-16], 9);
        expectDigits([Math.sqrt(fit.variance!)], [0.205177424076185e-3], 9);
    });

    /*
     * NIST/SEMATECH e-Handbook of Statistical Methods, 4.6.1.5 (www.itl.nist.gov/div898/handbook/pmd/section6/pmd615.htm): the same
     * data as a load cell's calibration. A straight line lacks fit with F = 214.7464 against 2.15 for 18 and 20 degrees of freedom.
     */
    it('tells the lack of fit of a straight line through Pontius, as in the handbook', () => {
        const fit = line(pontius, (x) => [1, x]);
        const alike = pontius.map(([load]) => String(load));
        const straight = lackOfFit(alike, fit.residuals, 0, 2)!;
        expect(straight.ratio).toBeCloseTo(214.7464, 2);
        expect([straight.between, straight.within]).toEqual([18, 20]);
        expect(straight.probability).toBeLessThan(1e-12);
        expect(fTail(2.15, 18, 20)).toBeCloseTo(0.05, 3);
        // The curve of the certified fit has nothing against it.
        const curved = lackOfFit(alike, line(pontius, (x) => [1, x, x * x]).residuals, 0, 3)!;
        expect(curved.ratio).toBeLessThan(2.2);
        expect(curved.probability).toBeGreaterThan(0.05);
    });

    it('takes weights: a row of half the error counts like four rows', () => {
        const row = (x: number): number[] => [1, x];
        const once = leastSquares([1, 2, 4].map(row), [1, 3, 4], [1, 1, 0.5])!;
        const repeated = leastSquares([1, 2, 4, 4, 4, 4].map(row), [1, 3, 4, 4, 4, 4])!;
        once.parameters.forEach((value, j) => {
            expect(value).toBeCloseTo(repeated.parameters[j]!, 12);
        });
    });
});

describe('nonlinear regression', () => {
    const curve: Curve<number> = {
        value: (x, [b1, b2]) => b1! * (1 - Math.exp(-b2! * x)),
        slopes: (x, [b1, b2]) => [1 - Math.exp(-b2! * x), b1! * x * Math.exp(-b2! * x)],
    };

    it.each([[[500, 1e-4]], [[250, 5e-4]]])('agrees with Misra1a to six digits from %j', (start) => {
        const fit = nonlinearLeastSquares(
            curve,
            misra1a.map(([x]) => x!),
            misra1a.map(([, y]) => y!),
            start,
        )!;
        expectDigits(fit.parameters, [2.3894212918e2, 5.5015643181e-4], 6);
        expectDigits(fit.errors ?? [], [2.7070075241, 7.2668688436e-6], 6);
        expectDigits([fit.residualSum, Math.sqrt(fit.variance!)], [1.2455138894e-1, 1.018787633e-1], 6);
        expect(fit.degreesOfFreedom).toBe(12);
        expect(fit.converged).toBe(true);
    });

    it('says when the steps ran out: y = 1/b comes nearer to nothing for ever', () => {
        const falling: Curve<number> = { value: (_, [b]) => 1 / b!, slopes: (_, [b]) => [-1 / b! ** 2] };
        expect(nonlinearLeastSquares(falling, [1, 2], [0, 0], [1])?.converged).toBe(false);
        expect(nonlinearLeastSquares(falling, [1, 2], [2, 2], [1])).toMatchObject({ converged: true, parameters: [0.5] });
    });
});
