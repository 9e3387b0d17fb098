import { depthOf, doseOf, type LawNumbers } from '../../shared/burn/dose';
import { fitCoupon } from '../../shared/burn/fit';
import { solveDepth } from '../../shared/burn/solve';
import { bell, burn, couponOf, shed } from './stock';

/** Maple on the shed's laser, as the workshop's own coupon has it. */
const truth: LawNumbers = { threshold: 0.28, energy: 3.1, fade: 0.98 };
const squares = [
    [0.4, 400, 1],
    [0.55, 350, 1],
    [0.6, 300, 1],
    [0.75, 300, 1],
    [0.8, 250, 1],
    [0.9, 250, 1],
    [0.7, 300, 2],
    [0.5, 300, 3],
] as const;
/** Place to place (of the depth), the gauge (mm), and the veneer: 1 sd is half of the tolerance. */
const place = 0.05;
const gauge = 0.01;
const veneer = { usual: 0.6, tolerance: 0.03 };

export interface Skins {
    /** Share of veneers that keep a skin, where each is as thick as it happens to be, and where all are as thick as they may be. */
    readonly asBought: number;
    readonly thickest: number;
    /** Mean of the machine's time against that of burning to the thick end half of the time. */
    readonly time: number;
    /** Share of coupons too wide to be burnt by. */
    readonly refused: number;
}

/** Burns veneers through, each by a coupon of its own; `sure` as a wish has it, undefined for the median at the thick end. */
export function burnVeneers(seeds: readonly number[], sure: number | undefined, count: number = squares.length): Skins {
    let [skins, thick, refused, time] = [0, 0, 0, 0];
    for (const seed of seeds) {
        const roll = bell(seed);
        const measured = (depth: number): number =>
            Math.max(0.01, Math.round((depth * (1 + place * roll()) + 0.02 * roll()) / gauge) * gauge);
        const rows = squares.slice(squares.length - count).map(([ratio, speed, passes]) => {
            const dose = doseOf({ power: 45 * ratio, speed, pitch: 0.1 });
            return burn(ratio, speed, passes, measured(depthOf(truth, dose, passes)));
        });
        const law = fitCoupon(couponOf(rows), shed);
        const depth = veneer.usual + veneer.tolerance;
        const given = { passes: 3, pitch: 0.1 };
        const plain = solveDepth(law, shed, { depth }, given)!;
        const solved = sure === undefined ? plain : solveDepth(law, shed, { depth, sure }, given)!;
        const dug = depthOf(truth, solved.dose, 3) * (1 + place * roll());
        if (solved.limits.includes('unsure')) {
            refused++;
            continue;
        }
        const half = (veneer.tolerance / 2) * roll();
        const thickness = veneer.usual + Math.min(veneer.tolerance, Math.max(-veneer.tolerance, half));
        if (dug < thickness) skins++;
        if (dug < depth) thick++;
        time += solved.dose / plain.dose;
    }
    const burnt = seeds.length - refused;
    return { asBought: skins / burnt, thickest: thick / burnt, time: time / burnt, refused: refused / seeds.length };
}
