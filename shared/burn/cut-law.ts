import { bracket } from '../quantity/bracket';
import type { Coupon, Laser, Wood } from '../recipe/stock';
import { type CutBeam, type CutSettings, cutBeam, cutMargin } from './cut-energy';
import { wattsOf } from './power-curve';

/** One cut that was tried: what with, how thick the sheet was (mm), and whether it came through or how deep it went. */
export interface CutRow extends CutSettings {
    readonly thickness: number;
    readonly through: boolean;
    /** Depth (mm) of one that did not come through, where it was measured. */
    readonly depth?: number;
}

/** The cuts that were tried of a wood on a laser, and what the estimate says of both. */
export interface CutLaw {
    readonly beam: CutBeam;
    readonly rows: readonly CutRow[];
    /** Nothing was tried: all comes from the estimate. */
    readonly guess: boolean;
}

/**
 * How likely cuts of one number of passes through about one thickness come through.
 * P = 1 / (1 + exp(−(x − m)/s)) with x the log of the energy over the estimated need (cut-energy.ts): m is what the estimate is
 * off by on this wood and laser, s how much cuts differ from place to place. Both are weighed on a grid: the likelihood of the
 * tests times what is thought of them before, the estimate's own error and a usual spread (logistic dose and response with a grid
 * over both, as in the bioassay of Gelman et al., Bayesian Data Analysis, ch. 3.7). So one test helps already, none is a guess
 * with its honest width, and tests that are parted cleanly keep finite answers. A test of another thickness or number of
 * passes tells less, by what the estimate may be off between the two.
 */
export interface CutChances {
    readonly beam: CutBeam;
    readonly grid: readonly GridPoint[];
}

interface GridPoint {
    readonly offset: number;
    readonly scale: number;
    readonly weight: number;
}

/** What the estimate may be off by before any test, one standard deviation of the log: 95 % lie within 2.4 times (own estimate). */
const GUESS_SPREAD = 0.45;
/** Scale of the logistic, and one standard deviation of its log: about 7 % of energy from place to place. @commonPractice */
const USUAL_SCALE = 0.04;
const SCALE_SPREAD = 0.5;
/** How far the need may part from the estimate where thickness or passes are e times as many, one deviation of the log (own estimate). */
const THICKNESS_SPREAD = 0.3;
const PASSES_SPREAD = 0.3;
/** A logistic of scale s has the deviation πs/√3. */
const DEVIATION = Math.PI / Math.sqrt(3);
const MOST_TESTS = 200;

const offsets = Array.from({ length: 121 }, (_, i) => (i - 60) * 0.03);
const scales = Array.from({ length: 9 }, (_, i) => USUAL_SCALE * Math.exp(((i - 4) / 2) * SCALE_SPREAD));
const prior = offsets.flatMap((offset) =>
    scales.map((scale) => ({
        offset,
        scale,
        weight: -0.5 * (offset / GUESS_SPREAD) ** 2 - 0.5 * (Math.log(scale / USUAL_SCALE) / SCALE_SPREAD) ** 2,
    })),
);

/** The usable cut tests of a coupon; those of a sheet whose thickness nobody has said are left out. */
export function cutRowsOf(coupon: Coupon | undefined, laser: Laser | undefined, thickness: number | undefined): CutRow[] {
    return (coupon?.cuts ?? []).slice(0, MOST_TESTS).flatMap((test) => {
        const row: CutRow = {
            power: wattsOf(test.power, laser) ?? Number.NaN,
            speed: test.speed.value,
            passes: test.passes,
            thickness: test.thickness?.value ?? thickness ?? Number.NaN,
            through: test.gives === 'through',
            ...(typeof test.gives === 'object' && { depth: test.gives.value }),
        };
        return isUsable(row) ? [row] : [];
    });
}

function isUsable({ power, speed, passes, thickness, depth = thickness }: CutRow): boolean {
    const within = (value: number, low: number, high: number): boolean => value >= low && value <= high;
    return (
        within(power, 1e-3, 1e5) &&
        within(speed, 1e-3, 1e6) &&
        within(passes, 1, 1000) &&
        within(thickness, 1e-3, 1e3) &&
        depth > 0
    );
}

export function cutLawOf(rows: readonly CutRow[], laser: Laser | undefined, wood: Wood | undefined): CutLaw {
    return { beam: cutBeam(laser, wood), rows, guess: rows.length === 0 };
}

/** What the tests say of cuts with so many passes through about a thickness (mm). O(tests). */
export function cutChances({ beam, rows }: CutLaw, passes: number, thickness: number): CutChances {
    const tests = rows.map((row) => ({
        row,
        x: cutMargin(beam, row, row.depth ?? row.thickness),
        away:
            Math.hypot(
                THICKNESS_SPREAD * Math.log((row.depth ?? row.thickness) / thickness),
                PASSES_SPREAD * Math.log(row.passes / passes),
            ) / DEVIATION,
    }));
    const logs = prior.map(({ offset, scale, weight }) =>
        tests.reduce((sum, { row, x, away }) => sum + logLikelihood(row, x, offset, Math.hypot(scale, away)), weight),
    );
    const most = Math.max(...logs);
    const weights = logs.map((log) => Math.exp(log - most));
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    const grid = prior.flatMap(({ offset, scale }, i) =>
        weights[i]! > 1e-5 ? [{ offset, scale, weight: weights[i]! / all }] : [],
    );
    return { beam, grid };
}

/** Of a cut that came through or not its probability; of one whose depth was measured, the density at that depth. */
export function logLikelihood(
    { through, depth }: Pick<CutRow, 'through' | 'depth'>,
    x: number,
    offset: number,
    scale: number,
): number {
    const z = (x - offset) / scale;
    const loss = (u: number): number => (u > 30 ? u : Math.log1p(Math.exp(u)));
    if (through) return -loss(-z);
    return depth === undefined ? -loss(z) : -loss(z) - loss(-z) - Math.log(scale);
}

/** Probability that settings come through a thickness (mm), for the next cut. */
export function throughChance({ beam, grid }: CutChances, settings: CutSettings, thickness: number): number {
    const x = cutMargin(beam, settings, thickness);
    return grid.reduce((sum, { offset, scale, weight }) => sum + weight / (1 + Math.exp(-(x - offset) / scale)), 0);
}

/** Thickness (mm) that settings come through with a probability. */
export function cutDepth(chances: CutChances, settings: CutSettings, chance: number): number {
    const comesThrough = (log: number): boolean => throughChance(chances, settings, Math.exp(log)) >= chance;
    return Math.exp(bracket(Math.log(1e-3), Math.log(1e3), comesThrough).last);
}
