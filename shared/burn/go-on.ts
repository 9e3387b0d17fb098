import type { Interval } from '../quantity/interval';
import type { Laser } from '../recipe/stock';
import { normalQuantile } from './distributions';
import { doseOf, type LawNumbers, type Settings, signedDepth } from './dose';
import { type DepthLaw, depthSlopes, measuringError } from './law';
import { type Given, isSure, type Solution, solveDepth, type Wish } from './solve';
import { MOST_OVERBURN, surelyGives } from './surely';

/** A depth (mm) that was measured in a pocket before all of its passes were burnt, and with what it was burnt so far. */
export interface SoFar {
    readonly settings: Settings;
    readonly depth: number;
    /** Half width of the reading; 0 where none is written. */
    readonly tolerance: number;
}

/** A depth that says the wood took less or more than these parts of what the law says was misread: no piece is so unlike its coupon. */
const CREDIBLE = { low: 0.4, high: 2.5 };
/** Settings are rounded, so that a depth is asked for by a little more than it lacks, mm. */
const FINER = 1e-3;
/** The depth is not a straight line in the energy, so the law is moved in steps. */
const STEPS = 8;

/** Whether a piece can be so unlike its coupon as a depth says. */
export function isCredible(law: DepthLaw, { settings, depth }: SoFar): boolean {
    const expected = signedDepth(law, doseOf(settings), settings.passes);
    return expected > 0 && depth / expected >= CREDIBLE.low && depth / expected <= CREDIBLE.high;
}

/**
 * The law of the very piece in which a depth was measured: that of its board, with what pieces differ by, as the depth moves it. A
 * measurement of a normal state (the update of an iterated extended Kalman filter: Simon, Optimal State Estimation, ch. 13; from
 * memory). What is left to scatter is the place and the reading, so its intervals are for this piece. As it stands where the depth is not credible.
 */
export function lawOfPiece(law: DepthLaw, soFar: SoFar): DepthLaw {
    if (!isCredible(law, soFar)) return law;
    const { settings, depth } = soFar;
    const dose = doseOf(settings);
    const numbersOf = ([threshold, energy, fade]: Numbers): LawNumbers => ({ ...formOf(law), threshold, energy, fade });
    const before: Numbers = [law.threshold, law.energy, law.fade];
    const spread = law.pieces?.sigma ?? 0;
    const scale: Numbers = [law.threshold * spread, law.energy * spread, 0];
    const prior = Array.from({ length: 9 }, (_, at) => {
        const [i, j] = [Math.floor(at / 3), at % 3];
        return law.covariance[at]! + scale[i]! * scale[j]! + (at === 8 ? law.fadeAssumed ** 2 : 0);
    });
    const noise = readingOf(law, soFar) ** 2;
    let [now, covariance] = [before, prior];
    for (let step = 0; step < STEPS; step++) {
        const slopes = depthSlopes(numbersOf(now), dose, settings.passes);
        const pulled = [0, 1, 2].map((i) => slopes.reduce((sum, slope, j) => sum + prior[3 * i + j]! * slope, 0));
        const all = noise + slopes.reduce((sum, slope, i) => sum + slope * pulled[i]!, 0);
        const off = slopes.reduce((sum, slope, i) => sum + slope * (now[i]! - before[i]!), 0);
        const miss = depth - signedDepth(numbersOf(now), dose, settings.passes) + off;
        // Half of the way at most: nothing of it may turn its sign.
        now = before.map((each, i) => Math.max(each + (pulled[i]! * miss) / all, now[i]! / 2)) as Numbers;
        covariance = prior.map((each, at) => each - (pulled[Math.floor(at / 3)]! * pulled[at % 3]!) / all);
    }
    // Its form was chosen: other laws say nothing of this piece that its depth does not say better.
    const { pieces: _, rivals: __, ...board } = law;
    return { ...board, ...numbersOf(now), covariance, errors: errorsOf(covariance), fadeAssumed: 0 };
}

/**
 * The law of the passes that come after so many: each takes as much less as the fade says, as if the energy were greater, and a bend
 * with it. Where later passes take alike, all of the rest do.
 */
export function lawOfRest(law: DepthLaw, passes: number): DepthLaw {
    const { laterAlike, bend, ...straight } = law;
    const times = laterAlike === true ? 1 : passes;
    const worth = law.fade ** times;
    const energy = law.energy / worth;
    // Energy of the rest from energy and fade: its slopes along them.
    const [ofEnergy, ofFade] = [1 / worth, (-times * energy) / law.fade];
    const rows: readonly Numbers[] = [
        [1, 0, 0],
        [0, ofEnergy, ofFade],
        [0, 0, laterAlike === true ? 0 : 1],
    ];
    const covariance = Array.from({ length: 9 }, (_, at) => {
        const [one, other] = [rows[Math.floor(at / 3)]!, rows[at % 3]!];
        return one.reduce((sum, a, i) => sum + other.reduce((part, b, j) => part + a * b * law.covariance[3 * i + j]!, 0), 0);
    });
    return {
        ...straight,
        energy,
        ...(laterAlike === true && { fade: 1 }),
        ...(bend !== undefined && { bend: bend / worth }),
        covariance,
        errors: errorsOf(covariance),
    };
}

/** Depth of all passes together (mm) where the rest gives an interval: what was read of the first may be off by itself. */
export function withRest(law: DepthLaw, soFar: SoFar, rest: Interval): Interval {
    const reading = 1.96 * readingOf(law, soFar);
    const value = soFar.depth + rest.value;
    return {
        value,
        low: value - Math.hypot(reading, rest.value - rest.low),
        high: value + Math.hypot(reading, rest.high - rest.value),
    };
}

/** What a reading is too deep by at most with a probability such as 0.975, mm. */
export function readingError(law: DepthLaw, soFar: SoFar, sure: number): number {
    return normalQuantile(sure) * readingOf(law, soFar);
}

/** What a rest takes at least (mm) where what was read before it may be off by `unsure`. */
function surelyOfRest(rest: DepthLaw, solution: Solution, sure: number, unsure: number): number {
    return solution.depth.value - Math.hypot(unsure, solution.depth.value - surelyGives(rest, solution, sure));
}

/** In so many steps a rest is found that is surely enough. */
const ROUNDS = 8;

/**
 * What is left of a burn; where it is to be reached surely, so much more that neither the rest nor the reading before it leaves anything.
 * Of the whole depth no more than half is burnt in excess, as of one that was not measured: then the limit `unsure` says so.
 *
 * @param unsure what the reading may be too deep by, mm
 * @param whole the whole depth, mm
 */
export function solveRest(
    rest: DepthLaw,
    laser: Laser | undefined,
    { sure, ...wish }: Extract<Wish, { depth: number }>,
    free: Given,
    { unsure, whole }: { readonly unsure: number; readonly whole: number },
): Solution | undefined {
    if (sure === undefined) return solveDepth(rest, laser, wish, free);
    const most = wish.depth + (MOST_OVERBURN - 1) * whole;
    let target = wish.depth;
    for (let round = 0; ; round++) {
        const found = solveDepth(rest, laser, { ...wish, depth: target }, free);
        if (found === undefined) return undefined;
        const surely = surelyOfRest(rest, found, sure, unsure);
        const missing = wish.depth - surely;
        if (isSure(surely, wish.depth)) return { ...found, surely };
        if (round === ROUNDS || target >= most) return { ...found, surely, limits: [...found.limits, 'unsure'] };
        target = Math.min(most, target + missing + FINER);
    }
}

/** Standard error (mm) of a reading in one place. */
function readingOf(law: DepthLaw, { depth, tolerance }: SoFar): number {
    return Math.sqrt(law.variance) * measuringError(depth, tolerance > 0 ? tolerance / 1.96 : law.measuring);
}

type Numbers = [number, number, number];

/** What of a law is no number that a depth moves. */
function formOf({ bend, laterAlike }: LawNumbers): Pick<LawNumbers, 'bend' | 'laterAlike'> {
    return { ...(bend !== undefined && { bend }), ...(laterAlike === true && { laterAlike }) };
}

function errorsOf(covariance: readonly number[]): LawNumbers {
    const at = (i: number): number => Math.sqrt(Math.max(0, covariance[4 * i]!));
    return { threshold: at(0), energy: at(1), fade: at(2) };
}
