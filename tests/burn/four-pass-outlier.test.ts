import { describe, expect, it } from 'vitest';
import { depthOf } from '../../shared/burn/dose';
import { fitCoupon } from '../../shared/burn/fit';
import type { DepthLaw } from '../../shared/burn/law';
import { predict } from '../../shared/burn/law';
import { ladder, pitch, readDepth, scatter, simulatedCoupon } from '../kit/simulated-coupon';
import { bell, shed } from './stock';

const seeds = Array.from({ length: 100 }, (_, at) => at + 1);
const last = ladder.length - 1; // the only one of four passes

/** Simulated coupons of which the square of four passes is read so many times too deep. */
function coupons(spoilt: number, truth = { threshold: 0.15, energy: 3, fade: 0.96 }): DepthLaw[] {
    return seeds.map((seed) => {
        const roll = bell(seed * 31 + 5);
        const read = (depth: number): number => readDepth(depth, roll, { ...scatter, gauge: 0.01, least: 0.01 });
        const measured = (dose: number, passes: number): number =>
            read(depthOf(truth, dose, passes)) * (passes === 4 ? spoilt : 1);
        return fitCoupon(simulatedCoupon(measured), shed);
    });
}
const share = (laws: readonly DepthLaw[], holds: (law: DepthLaw) => boolean): number => laws.filter(holds).length / laws.length;

describe('a single square of four passes', () => {
    it('is named and has no pull where it was misread by half', () => {
        const laws = coupons(1.45);
        expect(share(laws, ({ rows }) => rows[last]!.leftOut === true)).toBeGreaterThan(0.95);
        expect(share(laws, ({ rows }) => rows.some((row, at) => at !== last && row.outlier))).toBeLessThan(0.05);
        // Nine passes lie far beyond what is left: two squares of two passes and one of three.
        const settings = { power: 36, speed: 300, pitch, passes: 9 };
        const truth = depthOf({ threshold: 0.15, energy: 3, fade: 0.96 }, 1.2, 9);
        const offs = laws.map((law) => predict(law, settings)!.value / truth - 1);
        expect(Math.sqrt(offs.reduce((sum, off) => sum + off ** 2, 0) / offs.length)).toBeLessThan(0.2);
    });
    it('is accused in less than one of fifty coupons that hold no slip', () => {
        expect(share(coupons(1), ({ rows }) => rows[last]!.outlier)).toBeLessThan(0.02);
    });
    it('is not accused where every later pass really gains more than can be', () => {
        expect(share(coupons(1, { threshold: 0.15, energy: 3, fade: 1.12 }), ({ rows }) => rows[last]!.outlier)).toBeLessThan(
            0.05,
        );
    });
});
