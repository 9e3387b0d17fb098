import { fTail } from './distributions';

/** Deviations from a law, split into what repeated squares differ by among each other and how far their means lie off the law. */
export interface LackOfFit {
    /** Mean square of the means about the law over that of squares about their means: about 1 where the law fits. */
    readonly ratio: number;
    /** Degrees of freedom of both: settings less fitted numbers, and squares less settings. */
    readonly between: number;
    readonly within: number;
    /** How often chance alone makes the ratio as great where the law fits. */
    readonly probability: number;
    /** Mean squares of both, in units of the assumed measuring error squared. */
    readonly off: number;
    readonly pure: number;
    /** Squares of one setting, as one that is unevenly repeated counts. */
    readonly each: number;
}

/**
 * Tests a fitted law by squares that were repeated: pure error against lack of fit, with an F test (NIST/SEMATECH e-Handbook of
 * Statistical Methods, 4.4.4.6). Undefined where none were repeated, or no more settings than numbers were burnt.
 *
 * @param alike for each residual what it has in common with those of the same setting
 * @param residuals measured less fitted, each over its assumed standard error
 * @param least mean square that squares of one setting differ by at least, so that a coarse gauge which reads all of them
 * alike does not make them seem perfect
 * @param fitted how many numbers were fitted
 */
export function lackOfFit(
    alike: readonly string[],
    residuals: readonly number[],
    least: number,
    fitted: number,
): LackOfFit | undefined {
    const groups = new Map<string, number[]>();
    for (const [at, key] of alike.entries()) groups.set(key, [...(groups.get(key) ?? []), at]);
    const within = residuals.length - groups.size;
    const between = groups.size - fitted;
    if (within < 1 || between < 1) return undefined;
    let [pureSum, offSum, squares] = [0, 0, 0];
    for (const members of groups.values()) {
        const mean = members.reduce((sum, at) => sum + residuals[at]!, 0) / members.length;
        for (const at of members) pureSum += (residuals[at]! - mean) ** 2;
        offSum += members.length * mean ** 2;
        squares += members.length ** 2;
    }
    const pure = Math.max(pureSum / within, least);
    const off = offSum / between;
    if (!(pure > 0) || !Number.isFinite(off)) return undefined;
    const each = (residuals.length - squares / residuals.length) / (groups.size - 1);
    return { ratio: off / pure, between, within, probability: fTail(off / pure, between, within), off, pure, each };
}
