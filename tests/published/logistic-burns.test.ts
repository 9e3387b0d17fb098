import { describe, expect, it } from 'vitest';
import { logLikelihood } from '../../shared/burn/cut-law';

/*
 * Survival of 435 adults by the area of their burns: log(area + 1), survived, died. Table, estimates and deviances as printed in the public course
 * notes github.com/hardin47/website, Math150/Notes/05-log.md (read there): logit(p) = 22.708 - 10.662 x by R's glm with standard errors 2.266 and 1.083,
 * null deviance 525.386 and residual deviance 335.231.
 */
const groups = [
    [1.35, 13, 0],
    [1.6, 19, 0],
    [1.75, 67, 2],
    [1.85, 45, 5],
    [1.95, 71, 8],
    [2.05, 50, 20],
    [2.15, 35, 31],
    [2.25, 7, 49],
    [2.35, 1, 12],
] as const;

/** Log likelihood with an intercept and a slope: what survives grows less with the area, so the axis is turned round. */
function logOf(intercept: number, slope: number): number {
    return groups.reduce((sum, [x, survived, died]) => {
        const [offset, scale] = [-intercept / slope, -1 / slope];
        const at = (through: boolean): number => logLikelihood({ through }, -x, -offset, scale);
        return sum + survived * at(true) + died * at(false);
    }, 0);
}

/** Newton's steps on differences of our own likelihood. */
function maximum(): { intercept: number; slope: number; errors: readonly [number, number] } {
    const h = 1e-4;
    let [a, b] = [20, -10];
    let errors: readonly [number, number] = [0, 0];
    for (let step = 0; step < 40; step++) {
        const at = (i: number, j: number): number => logOf(a + i * h, b + j * h);
        const [da, db] = [(at(1, 0) - at(-1, 0)) / (2 * h), (at(0, 1) - at(0, -1)) / (2 * h)];
        const aa = (at(1, 0) - 2 * at(0, 0) + at(-1, 0)) / h ** 2;
        const bb = (at(0, 1) - 2 * at(0, 0) + at(0, -1)) / h ** 2;
        const ab = (at(1, 1) - at(1, -1) - at(-1, 1) + at(-1, -1)) / (4 * h ** 2);
        const determinant = aa * bb - ab ** 2;
        a -= (bb * da - ab * db) / determinant;
        b -= (aa * db - ab * da) / determinant;
        errors = [Math.sqrt(-bb / determinant), Math.sqrt(-aa / determinant)];
    }
    return { intercept: a, slope: b, errors };
}

describe('the likelihood of cut tests on the published survival of burns', () => {
    const found = maximum();
    it('has its maximum at the published estimates', () => {
        expect(found.intercept).toBeCloseTo(22.708, 2);
        expect(found.slope).toBeCloseTo(-10.662, 2);
    });
    it('falls off by the published standard errors', () => {
        expect(found.errors[0]).toBeCloseTo(2.266, 2);
        expect(found.errors[1]).toBeCloseTo(1.083, 2);
    });
    it('and comes to the published deviances', () => {
        expect(-2 * logOf(found.intercept, found.slope)).toBeCloseTo(335.231, 2);
        const [survived, all] = [308, 435];
        const nothing = survived * Math.log(survived / all) + (all - survived) * Math.log(1 - survived / all);
        expect(-2 * nothing).toBeCloseTo(525.386, 2);
        expect(groups.reduce((sum, [, alive]) => sum + alive, 0)).toBe(survived);
    });
    it.each([
        [1, 0.9999941],
        [1.5, 0.9987889],
        [2, 0.7996326],
        [2.5, 0.01894664],
    ])('gives at %d the published probability', (x, p) => {
        const [a, b] = [22.708, -10.662];
        expect(Math.exp(logLikelihood({ through: true }, -x!, a / b, -1 / b))).toBeCloseTo(p!, 6);
    });
});
