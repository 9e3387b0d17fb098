import { coverageFactor, medianOf } from './distributions';
import { depthOf } from './dose';
import { lawOrder, type Numbers, type Problem, readingOf } from './fit-problem';
import { type DepthLaw, FADE_SPREAD, type LawNote, type LawRow, pooledVariance } from './law';

/** The law with its covariance, its rows and what they explain; `weighed` if it was weighed against the guess. */
export function lawOf(problem: Problem, found: Numbers, weighed: boolean): DepthLaw {
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
            covariance[3 * lawOrder.indexOf(a) + lawOrder.indexOf(b)] = variance * fit.spread[i * free.length + j]!;
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
