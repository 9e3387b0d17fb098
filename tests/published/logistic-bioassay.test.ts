import { expect, test } from 'vitest';
import { logLikelihood } from '../../shared/burn/cut-law';

/*
 * Racine et al. 1986, as table 3.1 of Gelman et al., Bayesian Data Analysis: four doses (log g/ml), five animals each. The book
 * prints the maximum of the likelihood as (alpha, beta) = (0.8, 7.7) with standard errors (1.0, 4.9) (data and estimates from
 * memory; the digits here are those of Newton's steps on the same data, worked out apart).
 */
const doses = [-0.86, -0.3, -0.05, 0.73];
const died = [0, 1, 3, 5];
const logOf = (alpha: number, beta: number): number =>
    doses.reduce((sum, x, i) => {
        const yes = logLikelihood({ through: true }, x, -alpha / beta, 1 / beta);
        const no = logLikelihood({ through: false }, x, -alpha / beta, 1 / beta);
        return sum + died[i]! * yes + (5 - died[i]!) * no;
    }, 0);

test('the likelihood of cut tests has its maximum where the published logistic regression has it', () => {
    const [alpha, beta] = [0.84658, 7.74882];
    const top = logOf(alpha, beta);
    for (const [a, b] of [
        [0.01, 0],
        [-0.01, 0],
        [0, 0.05],
        [0, -0.05],
        [0.01, 0.05],
        [-0.01, -0.05],
    ] as const)
        expect(logOf(alpha + a, beta + b)).toBeLessThan(top);
    expect(Number(alpha.toFixed(1))).toBe(0.8);
    expect(Number(beta.toFixed(1))).toBe(7.7);
});

test('and falls off by its standard errors', () => {
    const h = 1e-3;
    const at = (a: number, b: number): number => logOf(0.84658 + a, 7.74882 + b);
    const aa = (at(h, 0) - 2 * at(0, 0) + at(-h, 0)) / h ** 2;
    const bb = (at(0, h) - 2 * at(0, 0) + at(0, -h)) / h ** 2;
    const ab = (at(h, h) - at(h, -h) - at(-h, h) + at(-h, -h)) / (4 * h ** 2);
    const determinant = aa * bb - ab ** 2;
    expect(Math.sqrt(-bb / determinant)).toBeCloseTo(1.0, 1);
    expect(Math.sqrt(-aa / determinant)).toBeCloseTo(4.9, 1);
});
