import { bracket } from '../quantity/bracket';
import { doseFor, doseOf, type Settings } from './dose';
import { type DepthLaw, predictDose } from './law';

/** Share of pieces that come out at the back where a recipe does not say one: the low end of a 95 % interval. */
export const USUAL_SURE = 0.975;

/**
 * As many times the dose that reaches a depth half of the time is the most that is burnt to be sure of it: where more would be
 * needed, the law is too wide to be burnt by, and a measured square helps more than char (own choice).
 */
export const MOST_OVERBURN = 1.5;

/** Two-sided coverage of which the lower end is passed with a probability. */
function coverageOf(sure: number): number {
    return Math.min(Math.max(2 * sure - 1, 0), 1 - 1e-6);
}

/** Depth (mm) that settings reach at least with a probability such as 0.975, for one new place. */
export function surelyGives(law: DepthLaw, settings: Settings, sure: number): number {
    return lowOf(law, doseOf(settings), settings.passes, sure);
}

/**
 * Dose of each pass (J/mm2) whose depth reaches `depth` (mm) with a probability such as 0.975. Undefined where that takes more
 * than 1.5 times the dose that reaches it half of the time, as with a guess or very few squares.
 */
export function sureDose(law: DepthLaw, depth: number, passes: number, sure: number): number | undefined {
    const median = doseFor(law, depth, passes);
    if (!(median > 0) || !Number.isFinite(median)) return undefined;
    const most = MOST_OVERBURN * median;
    const fallsShort = (dose: number): boolean => lowOf(law, dose, passes, sure) < depth;
    return fallsShort(most) ? undefined : bracket(median, most, fallsShort).first;
}

function lowOf(law: DepthLaw, dose: number, passes: number, sure: number): number {
    return predictDose(law, dose, passes, coverageOf(sure))?.low ?? 0;
}
