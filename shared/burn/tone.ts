import { bracket } from '../quantity/bracket';
import type { Interval } from '../quantity/interval';
import type { Coupon, Laser } from '../recipe/stock';
import { spotOf } from './beam';
import { coverageFactor } from './distributions';
import { pooledVariance } from './law';
import { pitchForSpot } from './pitch';
import { wattsOf } from './power-curve';
import { fitToneCurve, JUDGING, toneAt } from './tone-curve';
import type { ToneLaw, ToneRow } from './tone-law';

const mostRows = 200;
/** A straight line, a parabola, an exponential: what few squares cannot tell apart, and what differs most near the ceiling. */
const BENDS = [1, 2, Number.POSITIVE_INFINITY];
/** How many squares the assumed difference of two judgements counts for beside what is seen of it (own choice). */
const JUDGEMENTS_ASSUMED = 3;
/** A square is paler again where it lies below a weaker one by more than two judgements differ in 95 of 100 cases. */
const PALER = 2 * Math.SQRT2;

/** The usable squares of a coupon that were judged by tone. */
export function toneRowsOf(coupon: Coupon | undefined, laser: Laser | undefined): ToneRow[] {
    const pitch = coupon?.pitch?.value ?? pitchForSpot(spotOf(laser));
    if (pitch === undefined) return [];
    return (coupon?.tones ?? []).slice(0, mostRows).flatMap(({ power, speed, passes, tone }) => {
        const dose = ((wattsOf(power, laser) ?? Number.NaN) / (speed.value * pitch)) * passes;
        const row = { dose, tone: tone.value, tolerance: tone.tolerance, pitch };
        return usable(row) ? [row] : [];
    });
}

function usable({ dose, tone, tolerance }: ToneRow): boolean {
    return dose > 1e-6 && dose < 1e6 && tone >= 0 && tone <= 1 && tolerance < 1;
}

/**
 * The curves through judged squares, each weighed by how well it goes through them. Squares that are paler again than weaker ones end the
 * rising branch and are left out of the fit. Undefined where no square lies inside of the scale, or tone does not rise with dose.
 */
export function fitTone(given: readonly ToneRow[]): ToneLaw | undefined {
    const rows = given.filter(usable).toSorted((a, b) => a.dose - b.dose);
    const { rising, paler } = branchesOf(rows);
    const last = rising.at(-1);
    if (last === undefined || (paler.length > 0 && rising.length < Math.max(2, paler.length))) return undefined;
    const fits = BENDS.flatMap((bend) => fitToneCurve(rising, bend) ?? []);
    if (fits.length === 0) return undefined;
    const best = Math.min(...fits.map(({ sum }) => sum));
    const degreesOfFreedom = Math.max(0, ...fits.map((fit) => fit.degreesOfFreedom));
    const variance = pooledVariance(best, degreesOfFreedom, JUDGEMENTS_ASSUMED);
    const likely = fits.map(({ sum }) => Math.exp((best - sum) / (2 * variance)));
    const all = likely.reduce((total, one) => total + one, 0);
    const curves = fits.map(({ curve }, i) => ({ ...curve, weight: likely[i]! / all }));
    const pitch = rows[0]!.pitch;
    return {
        curves,
        variance,
        degreesOfFreedom,
        rises: { to: last.dose, tone: meanAt(curves, last.dose) },
        paler,
        rows,
        ...(pitch !== undefined && rows.every((row) => row.pitch === pitch) && { pitch }),
    };
}

/** Up to which square tone rises, and those beyond that are paler again. */
function branchesOf(rows: readonly ToneRow[]): { rising: ToneRow[]; paler: ToneRow[] } {
    let darkest: ToneRow | undefined;
    for (const [at, row] of rows.entries()) {
        const fell = darkest !== undefined && darkest.tone - row.tone > PALER * Math.max(errorOf(darkest), errorOf(row));
        // One pale square among darker ones is a slip; a branch that falls stays down.
        if (fell && rows.slice(at).every((later) => later.tone < darkest!.tone)) {
            return { rising: rows.slice(0, at), paler: rows.slice(at) };
        }
        if (darkest === undefined || row.tone > darkest.tone) darkest = row;
    }
    return { rising: [...rows], paler: [] };
}

function errorOf({ tolerance }: ToneRow): number {
    return tolerance > 0 ? Math.max(tolerance, 1e-3) : JUDGING;
}

function meanAt(curves: ToneLaw['curves'], dose: number): number {
    return curves.reduce((sum, curve) => sum + curve.weight * toneAt(curve, dose).value, 0);
}

/** Dose (J/mm2) of the darkest tone that a square stands for. */
export function darkestDose(law: ToneLaw): number {
    return doseForTone(law, 1);
}

/** Dose (J/mm2) below which nothing colours. */
export function onsetDose({ curves }: ToneLaw): number {
    return curves.reduce((sum, { weight, onset }) => sum + weight * onset, 0);
}

/** The least dose (J/mm2) on the rising branch that gives a tone; that of the branch's end where no square is so dark. */
export function doseForTone({ curves, rises }: ToneLaw, tone: number): number {
    const wanted = Math.min(tone, rises.tone);
    // Nothing gets darker by a thousandth of the scale that anybody sees: what is level counts from its beginning.
    const reaches = (dose: number): boolean => meanAt(curves, dose) >= wanted - (tone >= rises.tone ? 1e-3 : 1e-12);
    return bracket(0, rises.to, (dose) => !reaches(dose)).first;
}

/** The same law where every dose does as much as one that is the factor greater did; `error` is that of the factor's logarithm. */
export function withDoseFactor(law: ToneLaw, factor: number, error: number): ToneLaw {
    const scales = [1 / factor, factor, 1];
    const scaled = <Row extends { readonly dose: number }>(row: Row): Row => ({ ...row, dose: row.dose / factor });
    const curves = law.curves.map((curve) => {
        const [onset, rate] = [curve.onset / factor, curve.rate * factor];
        const moves = [-onset, rate, 0];
        const covariance = curve.covariance.map((each, at) => {
            const [i, j] = [Math.floor(at / 3), at % 3];
            return each * scales[i]! * scales[j]! + (error ** 2 * moves[i]! * moves[j]!) / law.variance;
        });
        return { ...curve, onset, rate, covariance };
    });
    const rises = { ...law.rises, to: law.rises.to / factor };
    return { ...law, curves, rises, paler: law.paler.map(scaled), rows: law.rows.map(scaled) };
}

/** The tone of the darkest square of the rising branch, or what the curve says there, whichever is more. */
export function darkestJudged({ rows, rises, paler }: ToneLaw): number {
    return Math.max(rises.tone, ...rows.slice(0, rows.length - paler.length).map((row) => row.tone));
}

/** Whether a tone is darker than any square, by more than a tone can be judged: beyond the last square nothing says that tone goes on rising. */
export function isDarkerThanJudged(law: ToneLaw, tone: number): boolean {
    return tone > darkestJudged(law) + JUDGING + 1e-9;
}

/**
 * Tone that a dose gives, with the interval for one new square judged as the others were: Student's t on the spread within the curves and
 * between them. Where squares came out paler again it goes from one to the next; beyond all of them it may be anything.
 */
export function predictTone(law: ToneLaw, dose: number, coverage = 0.95): Interval {
    const { curves, variance, degreesOfFreedom, rises, rows } = law;
    const at = Math.min(Math.max(dose, 0), rises.to);
    const told = curves.map((curve) => ({ weight: curve.weight, ...toneAt(curve, at) }));
    const value = told.reduce((sum, one) => sum + one.weight * one.value, 0);
    const between = told.reduce((sum, one) => sum + one.weight * (one.value - value) ** 2, 0);
    const within = told.reduce((sum, one) => sum + one.weight * one.variance, 0);
    const half =
        coverageFactor(coverage, degreesOfFreedom + JUDGEMENTS_ASSUMED) * Math.sqrt(variance * (JUDGING ** 2 + within) + between);
    const tone = tonePast(law, dose, value);
    if (dose > (rows.at(-1)?.dose ?? 0) * BEYOND) return { value: held(tone), low: 0, high: 1 };
    return { value: held(tone), low: held(tone - half), high: held(tone + half) };
}

/** Part by which a dose may lie beyond the last square and still be called the same. */
const BEYOND = 1.05;

function held(tone: number): number {
    return Math.min(1, Math.max(0, tone));
}

/** Beyond the rising branch: along straight lines through the squares that came out paler. */
function tonePast({ rises, paler }: ToneLaw, dose: number, top: number): number {
    let from = { dose: rises.to, tone: top };
    for (const row of paler) {
        if (dose <= from.dose) break;
        if (dose <= row.dose) return from.tone + ((row.tone - from.tone) * (dose - from.dose)) / (row.dose - from.dose);
        from = row;
    }
    return dose > rises.to ? from.tone : top;
}
