import type { Coupon, Laser, Wood } from '../recipe/stock';
import { coverageFactor } from './distributions';
import { depthOf, doseOf, type LawNumbers, passesWorth, signedDepth } from './dose';
import { guessLaw } from './guess';
import { type DepthLaw, depthSlopes, FADE_SPREAD, type LawNote, type LawRow, measuringError, pooledVariance } from './law';
import { type Curve, type Fit, leastSquares, nonlinearLeastSquares } from './least-squares';
import { type BurnRow, rowsOf, usable } from './rows';

/** Error of reading a depth (mm) where the row says none: a pocket gauge on burnt wood (common practice, no source). */
const MEASURING = 0.02;
/** Fades outside of these are taken as noise: passes neither die out that fast nor gain that much. */
const FADE_LIMITS = { low: 0.3, high: 1.1 };

const ROUNDS = 5;

type Name = keyof LawNumbers;
const order: readonly Name[] = ['threshold', 'energy', 'fade'];

/**
 * The depth law of a coupon on a laser. Rows of runs (measured squares in base units) count like the
 * coupon's own. Without usable rows it is the guess from the wood's density.
 */
export function fitCoupon(
    coupon: Coupon | undefined,
    laser: Laser | undefined,
    wood?: Wood,
    runs: readonly BurnRow[] = [],
): DepthLaw {
    const { rows, leftOut } = rowsOf(coupon, laser);
    const usableRuns = runs.filter(usable);
    const law = fitRows([...rows, ...usableRuns], guessLaw(wood, laser));
    return leftOut.length + runs.length > usableRuns.length ? { ...law, notes: [...law.notes, 'rows-left-out'] } : law;
}

/** The depth law of measured squares; the guess is weighed in where they are too few to stand alone. */
export function fitRows(rows: readonly BurnRow[], guess: DepthLaw): DepthLaw {
    if (rows.length === 0) return guess;
    const problem: Problem = { rows, doses: rows.map(doseOf), guess };
    return alone(problem) ?? combined(problem);
}

interface Problem {
    readonly rows: readonly BurnRow[];
    readonly doses: readonly number[];
    readonly guess: DepthLaw;
}

interface Numbers {
    readonly numbers: LawNumbers;
    readonly free: readonly Name[];
    readonly fit: Fit;
    /** Indices of the rows that were fitted: those that dug, and those that should have. */
    readonly active: readonly number[];
    /** Assumed standard error of each row (mm). */
    readonly units: readonly number[];
    readonly notes: readonly LawNote[];
}

/** Error of reading a row's depth, beside what goes with the depth itself. */
function readingOf(row: BurnRow): number {
    return row.tolerance > 0 ? Math.max(row.tolerance, 1e-3) : MEASURING;
}

/** The fit of the rows by themselves, if they can bear it. */
function alone(problem: Problem): DepthLaw | undefined {
    const fadeFree = fadeCanBeFitted(problem.rows);
    const notes: LawNote[] = !fadeFree && passesVary(problem.rows) ? ['fade-assumed'] : [];
    const start = startOf(problem);
    if (start === undefined) return undefined;
    const free: Name[] = fadeFree ? ['threshold', 'energy', 'fade'] : ['threshold', 'energy'];
    const found = withinBounds(problem, start, free, notes, []);
    if (found === undefined || found.fit.freedom < 1 || !(found.numbers.energy > 0)) return undefined;
    const law = lawOf(problem, found, false);
    // Rows that tell the energy no better than the guess does are worth more together with it.
    return law.errors.energy / law.energy < problem.guess.errors.energy / problem.guess.energy ? law : undefined;
}

/** The rows weighed against the guess, as if its threshold and energy had been measured with its errors. */
function combined(problem: Problem): DepthLaw {
    const { guess } = problem;
    const notes: LawNote[] = ['combined'];
    if (!problem.rows.some((row) => row.depth > 0)) notes.push('no-depth');
    else if (fallsWithDose(problem)) notes.push('falls-with-dose');
    else if (problem.rows.length > 2) notes.push('doses-alike');
    if (passesVary(problem.rows)) notes.push('fade-assumed');
    const found = withinBounds(problem, { ...guess, fade: 1 }, ['threshold', 'energy'], notes, ['threshold', 'energy']);
    if (found === undefined || !(found.numbers.energy > 0)) return { ...guess, notes: [...guess.notes, ...notes] };
    return lawOf(problem, found, true);
}

/** Fits, and holds at its limit whatever comes out beyond what can be. */
function withinBounds(
    problem: Problem,
    start: LawNumbers,
    free: readonly Name[],
    notes: readonly LawNote[],
    weighed: readonly Name[],
): Numbers | undefined {
    const found = inRounds(problem, start, free, notes, weighed);
    if (found === undefined) return undefined;
    const { numbers } = found;
    const without = (name: Name): Name[] => free.filter((other) => other !== name);
    if (free.includes('fade') && (numbers.fade < FADE_LIMITS.low || numbers.fade > FADE_LIMITS.high)) {
        const fade = Math.min(Math.max(numbers.fade, FADE_LIMITS.low), FADE_LIMITS.high);
        return withinBounds(problem, { ...start, fade }, without('fade'), [...notes, 'fade-held'], weighed);
    }
    if (free.includes('threshold') && numbers.threshold < 0) {
        return withinBounds(problem, { ...start, threshold: 0 }, without('threshold'), [...notes, 'threshold-at-zero'], weighed);
    }
    return found;
}

/**
 * Fits in rounds, since two things follow from the fit itself: rows that took nothing off tell only that
 * their dose was below the threshold, so they count (as a depth of zero) only where the law says they should
 * have dug; and the rows' errors grow with their depth, for which the fitted depth is taken, as the measured
 * one would favour whatever came out too shallow.
 */
function inRounds(
    problem: Problem,
    start: LawNumbers,
    free: readonly Name[],
    notes: readonly LawNote[],
    weighed: readonly Name[],
): Numbers | undefined {
    const { rows, doses, guess } = problem;
    const pulled = weighed.filter((name) => free.includes(name));
    const curve = curveOf(problem, start, free);
    let active = rows.flatMap((row, i) => (row.depth > 0 ? [i] : []));
    let units = rows.map((row) => measuringError(row.depth, readingOf(row)));
    let best: Numbers | undefined;
    for (let round = 0; round < ROUNDS; round++) {
        const xs: (number | Name)[] = [...active, ...pulled];
        const y = xs.map((x) => (typeof x === 'number' ? rows[x]!.depth : guess[x]));
        const errors = xs.map((x) => (typeof x === 'number' ? units[x]! : guess.errors[x]));
        const from = best?.numbers ?? start;
        const fit = nonlinearLeastSquares(
            curve,
            xs,
            y,
            free.map((name) => from[name]),
            errors,
        );
        if (fit === undefined) return undefined;
        const numbers = fill(start, free, fit.parameters);
        best = { numbers, free, fit, active, units, notes };
        const signed = rows.map((row, i) => signedDepth(numbers, doses[i]!, row.passes));
        // A row once taken in stays in, so that the rounds settle.
        active = rows.flatMap((row, i) => (row.depth > 0 || signed[i]! > 0 || best!.active.includes(i) ? [i] : []));
        units = rows.map((row, i) => measuringError(Math.max(0, signed[i]!), readingOf(row)));
    }
    return best;
}

function fill(base: LawNumbers, free: readonly Name[], parameters: readonly number[]): LawNumbers {
    const numbers = { threshold: base.threshold, energy: base.energy, fade: base.fade };
    free.forEach((name, j) => {
        numbers[name] = parameters[j]!;
    });
    return numbers;
}

/** x is a row's index, or the name of a number that is weighed against its guess. */
function curveOf({ rows, doses }: Problem, base: LawNumbers, free: readonly Name[]): Curve<number | Name> {
    return {
        value(x, parameters) {
            const numbers = fill(base, free, parameters);
            return typeof x === 'number' ? signedDepth(numbers, doses[x]!, rows[x]!.passes) : numbers[x];
        },
        slopes(x, parameters) {
            if (typeof x !== 'number') return free.map((name) => (name === x ? 1 : 0));
            const slopes = depthSlopes(fill(base, free, parameters), doses[x]!, rows[x]!.passes);
            return free.map((name) => slopes[order.indexOf(name)]!);
        },
    };
}

/** Where to start: the straight line d = (a·F − b)·passes through the rows that dug. */
function startOf({ rows, doses }: Problem): LawNumbers | undefined {
    const digging = rows.map((_, i) => i).filter((i) => rows[i]!.depth > 0);
    const line = leastSquares(
        digging.map((i) => [doses[i]! * rows[i]!.passes, -rows[i]!.passes]),
        digging.map((i) => rows[i]!.depth),
        digging.map((i) => measuringError(rows[i]!.depth, readingOf(rows[i]!))),
    );
    const [slope, offset] = line?.parameters ?? [];
    if (slope === undefined || offset === undefined || !(slope > 0)) return undefined;
    return { threshold: offset / slope, energy: 1 / slope, fade: 1 };
}

function passesVary(rows: readonly BurnRow[]): boolean {
    return new Set(rows.map((row) => row.passes)).size > 1;
}

/** Three numbers want two rows to spare, some of them with one pass and some with more, at more than one dose each. */
function fadeCanBeFitted(rows: readonly BurnRow[]): boolean {
    return rows.filter((row) => row.depth > 0).length >= 5 && passesVary(rows);
}

function fallsWithDose({ doses, rows }: Problem): boolean {
    const per = rows.map((row) => row.depth / passesWorth(1, row.passes));
    const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
    const meanDose = mean(doses);
    const meanDepth = mean(per);
    return rows.length > 2 && doses.reduce((sum, dose, i) => sum + (dose - meanDose) * (per[i]! - meanDepth), 0) < 0;
}

function lawOf(problem: Problem, found: Numbers, weighed: boolean): DepthLaw {
    const { numbers, free, fit, active } = found;
    const notes: LawNote[] = [...found.notes];
    const freedom = weighed ? active.length : fit.freedom;
    const variance = pooledVariance(fit.residualSum, freedom);
    const rows = describeRows(problem, found, weighed);
    if (!weighed && fit.freedom < 3) notes.push('few-rows');
    if (rows.some((row) => row.outlier)) notes.push('outliers');

    const covariance = new Array<number>(9).fill(0);
    free.forEach((a, i) => {
        free.forEach((b, j) => {
            covariance[3 * order.indexOf(a) + order.indexOf(b)] = variance * fit.spread[i * free.length + j]!;
        });
    });
    const fadeAssumed = free.includes('fade') || notes.includes('fade-held') ? 0 : FADE_SPREAD;
    const pitch = problem.rows[0]!.pitch;
    const doses = problem.doses;
    return {
        ...numbers,
        errors: {
            threshold: Math.sqrt(covariance[0]!),
            energy: Math.sqrt(covariance[4]!),
            fade: Math.sqrt(covariance[8]!) || fadeAssumed,
        },
        covariance,
        fadeAssumed,
        variance,
        measuring: medianOf(problem.rows.map(readingOf)),
        ...(!weighed && { freedom }),
        darkest: numbers.threshold > 0 ? numbers.threshold : problem.guess.threshold,
        ...(problem.rows.every((row) => row.pitch === pitch) && { pitch }),
        ...(!weighed && explainedOf(problem, found)),
        range: { low: Math.min(...doses), high: Math.max(...doses) },
        rows,
        guess: false,
        notes,
    };
}

function medianOf(values: readonly number[]): number {
    return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

function describeRows({ rows, doses }: Problem, { numbers, fit, active, units, free }: Numbers, weighed: boolean): LawRow[] {
    const freedomWithout = fit.freedom - 1;
    // Shared out over all rows (Bonferroni), so that a good coupon of many rows rarely accuses one.
    const limit = freedomWithout >= 1 ? coverageFactor(1 - 0.05 / active.length, freedomWithout) : Number.POSITIVE_INFINITY;
    return rows.map((row, i) => {
        const fitted = depthOf(numbers, doses[i]!, row.passes);
        const at = active.indexOf(i);
        const base = { ...row, dose: doses[i]!, fitted, residual: row.depth - fitted, outlier: false };
        if (at < 0 || weighed || freedomWithout < 1 || fit.leverages[at]! > 1 - 1e-9) return base;
        const scaled = fit.residuals[at]! / units[i]!;
        const left = 1 - fit.leverages[at]!;
        const varianceWithout = Math.max(0, fit.residualSum - scaled ** 2 / left) / freedomWithout;
        const studentised = scaled === 0 ? 0 : scaled / Math.sqrt(varianceWithout * left);
        if (!Number.isFinite(studentised) || free.length === 0) return base;
        // What lies within the measuring error is no outlier, however well the others fit.
        return { ...base, studentised, outlier: Math.abs(studentised) > limit && Math.abs(scaled) > 1 };
    });
}

function explainedOf({ rows }: Problem, { fit, active, units }: Numbers): { explained?: number; foretold?: number } {
    const weights = active.map((i) => units[i]! ** -2);
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    const mean = active.reduce((sum, i, k) => sum + weights[k]! * rows[i]!.depth, 0) / all;
    const total = active.reduce((sum, i, k) => sum + weights[k]! * (rows[i]!.depth - mean) ** 2, 0);
    if (!(total > 0)) return {};
    const left = active.reduce(
        (sum, _, k) => sum + weights[k]! * (fit.residuals[k]! / Math.max(1e-9, 1 - fit.leverages[k]!)) ** 2,
        0,
    );
    return { explained: 1 - fit.residualSum / total, foretold: 1 - left / total };
}
