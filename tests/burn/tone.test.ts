import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitCoupon } from '../../shared/burn/fit';
import { solveDepth } from '../../shared/burn/solve';
import { darkestDose, doseForTone, fitTone, onsetDose, predictTone } from '../../shared/burn/tone';
import type { ToneRow } from '../../shared/burn/tone-law';
import { nowhere } from '../../shared/quantity/where';
import { quantity, shed, woodOf } from './stock';

const row = (dose: number, tone: number, tolerance = 0): ToneRow => ({ dose, tone, tolerance });
/** Colours from 0.02 J/mm2 on, darkest at 0.12 J/mm2. */
const true_ = (dose: number): number => (dose - 0.02) / 0.1;

/** Even numbers from 0 to 1, the same every time. */
function even(seed: number): () => number {
    let state = seed;
    return () => {
        state = (state * 48271) % 2147483647;
        return state / 2147483647;
    };
}

describe('the tone of judged squares', () => {
    it('is the line they lie on, with its onset and its darkest dose', () => {
        const law = fitTone([0.04, 0.06, 0.08, 0.1].map((dose) => row(dose, true_(dose))))!;
        expect(onsetDose(law)).toBeCloseTo(0.02, 9);
        expect(darkestDose(law)).toBeCloseTo(0.12, 9);
        expect(doseForTone(law, 0.5)).toBeCloseTo(0.07, 9);
        expect(predictTone(law, 0.5).value).toBe(1);
        expect(predictTone(law, 0.001)).toMatchObject({ value: 0, low: 0 });
    });
    it('goes through nothing where they are few, and counts those at the ends of the scale for nothing', () => {
        const law = fitTone([row(0.05, 0.5), row(0.3, 1), row(0.001, 0)])!;
        expect(onsetDose(law)).toBeCloseTo(0, 12);
        expect(darkestDose(law)).toBeCloseTo(0.1, 9);
    });
    it('is none where they get paler with dose, or say nothing', () => {
        expect(fitTone([row(0.02, 0.8), row(0.05, 0.5), row(0.1, 0.2)])).toBeUndefined();
        expect(fitTone([row(0.1, 1), row(0.01, 0)])).toBeUndefined();
        expect(fitTone([])).toBeUndefined();
    });
    it('covers new squares with its 95 % interval about as often as it says', () => {
        const random = even(11);
        const normal = (): number => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
        const seen = (dose: number): number => true_(dose) + 0.05 * normal();
        let covered = 0;
        const rounds = 2000;
        for (let i = 0; i < rounds; i++) {
            const law = fitTone(
                [0.04, 0.05, 0.06, 0.07, 0.08, 0.09].map((dose) => row(dose, Math.min(0.98, Math.max(0.02, seen(dose))))),
            );
            const { low, high } = predictTone(law!, 0.065);
            const found = seen(0.065);
            if (found >= low && found <= high) covered++;
        }
        expect(covered / rounds).toBeGreaterThan(0.93);
        expect(covered / rounds).toBeLessThan(0.985);
    });
    it('never is an odd number', () => {
        const odd = fc.oneof(fc.double(), fc.constantFrom(0, 1e308, 1e-308, Number.NaN, 0.5));
        fc.assert(
            fc.property(fc.array(fc.tuple(odd, odd, odd), { maxLength: 6 }), odd, (rows, dose) => {
                const law = fitTone(rows.map(([a, b, c]) => row(a, b, c)));
                if (law === undefined) return;
                const { value, low, high } = predictTone(law, Number.isFinite(dose) ? dose : 0.1);
                for (const each of [value, low, high]) expect(each >= 0 && each <= 1).toBe(true);
            }),
            { numRuns: 300, seed: 5 },
        );
    });
});

describe('a tone that is asked for', () => {
    const square = (percent: number, speed: number, tone: number, passes = 1) => ({
        power: quantity(percent / 100, 'ratio'),
        speed: quantity(speed, 'speed'),
        passes,
        tone: quantity(tone, 'ratio'),
        where: nowhere,
    });
    // 45 W · 10 % / (600 mm/s · 0.1 mm) = 0.075 J/mm2.
    const coupon = {
        sheet: 's',
        laser: 'l',
        pitch: quantity(0.1, 'length'),
        burns: [],
        tones: [
            square(6, 600, true_(0.045)),
            square(10, 600, true_(0.075)),
            square(14, 600, true_(0.105)),
            square(5, 600, true_(0.075), 2),
        ],
        where: nowhere,
    };
    const law = fitCoupon(coupon, shed, woodOf(600e-6));

    it('is solved from the squares that were judged, the passes counted together', () => {
        expect(law.tone!.rows).toHaveLength(4);
        expect(law.darkest).toBeCloseTo(0.12, 6);
        const solved = solveDepth(law, shed, { tone: 0.5 }, { pitch: 0.1 })!;
        expect(solved.dose).toBeCloseTo(0.07, 3);
        expect(solved.reached).toBe(true);
        expect(solved.judged!.low).toBeLessThan(0.5);
        expect(solved.judged!.high).toBeGreaterThan(0.5);
        const twice = solveDepth(law, shed, { tone: 0.5 }, { pitch: 0.1, passes: 2 })!;
        expect(twice.dose * 2).toBeCloseTo(0.07, 2);
        expect(twice.tone).toBeCloseTo(0.5, 2);
    });
    it('is not reached by settings that give another', () => {
        const pale = solveDepth(law, shed, { tone: 0.9 }, { pitch: 0.1, power: 2.7, speed: 600, passes: 1 })!;
        expect(pale.reached).toBe(false);
        expect(pale.tone).toBeCloseTo(true_(0.045), 6);
    });
    it('comes from the threshold where no square was judged', () => {
        const plain = fitCoupon(undefined, shed, woodOf(600e-6));
        expect(plain.tone).toBeUndefined();
        expect(solveDepth(plain, shed, { tone: 0.5 })!.dose).toBeCloseTo(plain.threshold / 2, 2);
    });
});
