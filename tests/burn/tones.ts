import { fitCoupon } from '../../shared/burn/fit';
import { solveDepth } from '../../shared/burn/solve';
import { nowhere } from '../../shared/quantity/where';
import { bell, quantity, shed, woodOf } from './stock';

/**
 * Woods of which tone rises in unlike ways with the dose (J/mm2): along a line that stops, an exponential, an S-shaped curve, and one that rises
 * to a ceiling below the darkest and gets paler again.
 */
export const tonings = {
    line: (dose: number) => Math.min(1, Math.max(0, (dose - 0.02) / 0.12)),
    saturating: (dose: number) => Math.max(0, 1 - Math.exp(-(dose - 0.02) / 0.045)),
    'saturating at 80 %': (dose: number) => Math.max(0, 0.8 * (1 - Math.exp(-(dose - 0.01) / 0.035))),
    'S-shaped': (dose: number) => 1 / (1 + (0.065 / dose) ** 3),
    'paler again': (dose: number) => Math.max(0, 0.9 - 0.9 * ((dose - 0.11) / 0.09) ** 2),
} as const;
export type Toning = keyof typeof tonings;

/** How a maker judges: squares of these settings at 600 mm/s and 0.1 mm pitch, to steps of 5 % with an error of `error` (1 sd). */
export interface Judge {
    readonly error?: number;
    readonly settings?: readonly number[];
}

export interface ToneOutcome {
    /** Asked of the scale's darkest, as a part of what the wood comes to. */
    readonly asked: number;
    /** Mean of what the solved settings truly give less what is asked, and its root mean square. */
    readonly bias: number;
    readonly rms: number;
    /** Share of new squares, judged alike, that lie in the interval that was told of the settings. */
    readonly covered: number;
    /** Mean half width of that interval. */
    readonly half: number;
}

/** Coupons of a wood, each judged anew, and the tone asked for as a part of the darkest that its squares truly have. */
export function burnTones(toning: Toning, asked: number, seeds: readonly number[], judge: Judge = {}): ToneOutcome {
    const { error = 0.05, settings = [6, 8, 10, 12, 15, 18] } = judge;
    const truth = tonings[toning];
    const doseOfSetting = (percent: number): number => ((percent / 100) * 45) / (600 * 0.1);
    const top = Math.max(...settings.map((percent) => truth(doseOfSetting(percent))));
    let [bias, squared, covered, half, count] = [0, 0, 0, 0, 0];
    for (const seed of seeds) {
        const normal = bell(seed);
        const judged = (tone: number): number => Math.min(1, Math.max(0, Math.round((tone + error * normal()) * 20) / 20));
        const tones = settings.map((percent) => ({
            power: quantity(percent / 100, 'ratio'),
            speed: quantity(600, 'speed'),
            passes: 1,
            tone: quantity(judged(truth(doseOfSetting(percent))), 'ratio'),
            where: nowhere,
        }));
        const coupon = { sheet: 's', laser: 'l', pitch: quantity(0.1, 'length'), burns: [], tones, where: nowhere };
        const law = fitCoupon(coupon, shed, woodOf(600e-6));
        const solution = solveDepth(law, shed, { tone: asked * top });
        if (solution?.judged === undefined) continue;
        const given = truth(solution.dose);
        const { low, high } = solution.judged;
        const seen = judged(given);
        const miss = given - asked * top;
        bias += miss;
        squared += miss ** 2;
        covered += seen >= low - 1e-9 && seen <= high + 1e-9 ? 1 : 0;
        half += (high - low) / 2;
        count++;
    }
    return { asked, bias: bias / count, rms: Math.sqrt(squared / count), covered: covered / count, half: half / count };
}
