import { type LawNumbers, signedDepth } from './dose';
import { lawOrder, type Name, type Numbers, type Problem, readingOf } from './fit-problem';
import { bendSlope, depthSlopes, type LawNote, measuringError } from './law';
import { type Curve, type NonlinearFit, nonlinearLeastSquares } from './nonlinear-least-squares';

/** Fades outside of these are taken as noise: passes neither die out that fast nor gain that much. */
const FADE_LIMITS = { low: 0.3, high: 1.1 };

/** At most; few coupons need more than six. */
const MAX_ROUNDS = 60;
/** The rounds end where the numbers move by less than this part of their standard errors; above the other they have not come to rest. */
const SETTLED = 1e-4;
const UNSETTLED = 1e-2;

/**
 * Fits the `free` numbers from a start, those of them in `weighed` against their guess, and holds at its
 * limit whatever comes out beyond what can be. Undefined if the rows do not tell the numbers apart.
 */
export function withinBounds(
    problem: Problem,
    start: LawNumbers,
    free: readonly Name[],
    notes: readonly LawNote[],
    weighed: readonly Name[],
    rounds = MAX_ROUNDS,
): Numbers | undefined {
    const found = inRounds(problem, start, free, notes, weighed, rounds);
    if (found === undefined) return undefined;
    const { numbers } = found;
    const without = (name: Name): Name[] => free.filter((other) => other !== name);
    if (free.includes('fade') && (numbers.fade < FADE_LIMITS.low || numbers.fade > FADE_LIMITS.high)) {
        const fade = Math.min(Math.max(numbers.fade, FADE_LIMITS.low), FADE_LIMITS.high);
        return withinBounds(problem, { ...start, fade }, without('fade'), [...notes, 'fade-held'], weighed, rounds);
    }
    if (free.includes('threshold') && numbers.threshold < 0) {
        return withinBounds(
            problem,
            { ...start, threshold: 0 },
            without('threshold'),
            [...notes, 'threshold-at-zero'],
            weighed,
            rounds,
        );
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
    rounds: number,
): Numbers | undefined {
    const { rows, doses, guess } = problem;
    const pulled = weighed.filter((name) => free.includes(name));
    const curve = curveOf(problem, start, free);
    let active = rows.flatMap((row, i) => (row.depth > 0 ? [i] : []));
    let sigmas = rows.map((row) => measuringError(row.depth, readingOf(row)));
    let best: Numbers | undefined;
    let moved = 0;
    for (let round = 0; round < rounds; round++) {
        const xs: (number | Name)[] = [...active, ...pulled];
        const y = xs.map((x) => (typeof x === 'number' ? rows[x]!.depth : (guess[x] ?? 0)));
        const errors = xs.map((x) => (typeof x === 'number' ? sigmas[x]! : (guess.errors[x] ?? 1)));
        const from = best?.numbers ?? start;
        const fit = nonlinearLeastSquares(
            curve,
            xs,
            y,
            free.map((name) => from[name] ?? 0),
            errors,
        );
        if (fit === undefined) return undefined;
        const numbers = fill(start, free, fit.parameters);
        moved = farthest(best?.fit.parameters, fit);
        best = { numbers, free, fit, active, sigmas, notes, converged: fit.converged && moved < UNSETTLED };
        const signed = rows.map((row, i) => signedDepth(numbers, doses[i]!, row.passes));
        // A row once taken in stays in, so that the rounds settle.
        if (moved < SETTLED) break;
        active = rows.flatMap((row, i) => (row.depth > 0 || signed[i]! > 0 || best!.active.includes(i) ? [i] : []));
        sigmas = rows.map((row, i) => measuringError(Math.max(0, signed[i]!), readingOf(row)));
    }
    return best;
}

/** How far the parameters went from one round to the next, in their own standard errors. */
function farthest(before: readonly number[] | undefined, { parameters, unscaledCovariance, variance }: NonlinearFit): number {
    if (before === undefined) return Number.POSITIVE_INFINITY;
    const errors = parameters.map((_, j) => Math.sqrt((variance ?? 1) * unscaledCovariance[j * (parameters.length + 1)]!));
    return Math.max(...parameters.map((b, j) => Math.abs(b - before[j]!) / Math.max(errors[j]!, 1e-9 * Math.abs(b))));
}

function fill(base: LawNumbers, free: readonly Name[], parameters: readonly number[]): LawNumbers {
    const numbers: { -readonly [N in keyof LawNumbers]: LawNumbers[N] } = {
        threshold: base.threshold,
        energy: base.energy,
        fade: base.fade,
        ...(base.bend !== undefined && { bend: base.bend }),
        ...(base.laterAlike === true && { laterAlike: true }),
    };
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
            return typeof x === 'number' ? signedDepth(numbers, doses[x]!, rows[x]!.passes) : (numbers[x] ?? 0);
        },
        slopes(x, parameters) {
            if (typeof x !== 'number') return free.map((name) => (name === x ? 1 : 0));
            const numbers = fill(base, free, parameters);
            const slopes = depthSlopes(numbers, doses[x]!, rows[x]!.passes);
            return free.map((name) =>
                name === 'bend' ? bendSlope(numbers, doses[x]!, rows[x]!.passes) : slopes[lawOrder.indexOf(name)]!,
            );
        },
    };
}
