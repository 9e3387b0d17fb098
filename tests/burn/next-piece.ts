import { depthOf, doseFor, type LawNumbers } from '../../shared/burn/dose';
import { predict } from '../../shared/burn/law';
import { lawOfDay } from '../../shared/burn/law-of-day';
import type { DatedRow } from '../../shared/burn/power-by-day';
import { nowhere } from '../../shared/quantity/where';
import type { Sheet } from '../../shared/recipe/stock';
import { pitch, readDepth, scatter, simulatedCoupon } from '../kit/simulated-coupon';
import { bell, quantity, shed, woodOf } from './stock';

/*
 * A coupon on one board, a few runs on others perhaps, then the next piece: boards differ from the coupon's, days from each other,
 * places on a board, and the gauge reads in hundredths. The figures are assumed. @commonPractice
 */

const truth: LawNumbers = { threshold: 0.15, energy: 3, fade: 0.96 };
/** Standard deviation of the power of a day. */
const DAY = 0.02;

export interface Pieces {
    /** Share of next pieces, measured in one place, whose depth lies in the range that was told. */
    readonly covered: number;
    /** Mean half width of the range, and the one that would have held 95 of 100: parts of the depth. */
    readonly half: number;
    readonly needed: number;
}

/**
 * @param boards what other boards differ by from the coupon's, one standard deviation of the log of energy
 * @param declared what the stock says of it; undefined for nothing
 * @param runs how many pieces were burnt and measured before, a day and a board each
 */
export function burnPieces(boards: number, declared: number | undefined, seeds: readonly number[], runs = 0): Pieces {
    const sheet: Sheet = {
        kind: 'board',
        name: 'board',
        where: nowhere,
        wood: woodOf(600e-6),
        ...(declared !== undefined && { varies: quantity(declared, 'ratio') }),
    };
    const misses: number[] = [];
    let [covered, half] = [0, 0];
    for (const seed of seeds) {
        const roll = bell(seed * 13 + 5);
        const read = (depth: number): number => readDepth(depth, roll, { ...scatter, gauge: 0.01, least: 0.01 });
        const coupon = simulatedCoupon((dose, passes) => read(depthOf(truth, dose, passes)));
        const asked = 0.5 + 0.3 * (seed % 2);
        const rows: DatedRow[] = [];
        for (let piece = 0; ; piece++) {
            const law = lawOfDay(coupon, shed, sheet, rows);
            const set = { power: 36, speed: 36 / (doseFor(law, asked, 3) * pitch), pitch, passes: 3 };
            const dose = (36 / (set.speed * pitch)) * Math.exp(boards * roll() + DAY * roll());
            const depth = read(depthOf(truth, dose, 3));
            if (piece < runs) {
                rows.push({ date: `2026-05-${String(piece + 1).padStart(2, '0')}`, row: { ...set, depth, tolerance: 0 } });
                continue;
            }
            const told = predict(law, set)!;
            if (depth >= told.low && depth <= told.high) covered++;
            half += (told.high - told.low) / 2 / told.value;
            misses.push(Math.abs(depth / told.value - 1));
            break;
        }
    }
    misses.sort((a, b) => a - b);
    return {
        covered: covered / seeds.length,
        half: half / seeds.length,
        needed: misses[Math.floor(0.95 * misses.length)]!,
    };
}
