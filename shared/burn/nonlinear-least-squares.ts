import { columnLengths, describe, type Fit, factor, type Rows } from './least-squares';

/** A curve y(x; b): its value and its slopes along each parameter. */
export interface Curve<X> {
    value(x: X, parameters: readonly number[]): number;
    slopes(x: X, parameters: readonly number[]): readonly number[];
}

/** A fit that was reached step by step. */
export interface NonlinearFit extends Fit {
    /** False where the steps ran out before the residuals stood square on every way to better them. */
    readonly converged: boolean;
}

/**
 * What a step along the curve's tangent would still take off the sum, against what is left of it, each by its degrees of
 * freedom; below this, such a step is lost in the parameters' own errors (Bates & Watts, A relative offset orthogonality
 * convergence criterion for nonlinear least squares, Technometrics 23:179, 1981; from memory). Squared.
 */
const RELATIVE_OFFSET = 1e-6;
/** Residuals that small beside the data are rounding, so that a perfect fit counts as one. Squared. */
const ROUNDING = 1e-20;

/**
 * Nonlinear least squares by Levenberg and Marquardt's damped steps, each solved by the same QR
 * (Marquardt, J. SIAM 11:431, 1963; damping by the columns' own scale). Bounded in steps, and
 * says whether it converged within them; undefined if the start is not finite or the curve does not hold all parameters
 * apart at the end.
 */
export function nonlinearLeastSquares<X>(
    curve: Curve<X>,
    xs: readonly X[],
    y: readonly number[],
    start: readonly number[],
    sigmas?: readonly number[],
): NonlinearFit | undefined {
    const residualsAt = (b: readonly number[]): number[] => xs.map((x, i) => y[i]! - curve.value(x, b));
    const cost = (residuals: readonly number[]): number =>
        residuals.reduce((sum, r, i) => sum + (r / (sigmas?.[i] ?? 1)) ** 2, 0);

    let parameters = [...start];
    let residuals = residualsAt(parameters);
    let sum = cost(residuals);
    const slopesAt = (b: readonly number[]): number[][] => xs.map((x) => [...curve.slopes(x, b)]);
    if (!Number.isFinite(sum)) return undefined;
    let slopes = slopesAt(parameters);
    let damping = 1e-3;
    for (let step = 0; step < 500 && damping < 1e16; step++) {
        const change = dampedStep(slopes, residuals, damping, sigmas);
        const next = change && parameters.map((b, j) => b + change[j]!);
        const nextResiduals = next && residualsAt(next);
        const nextSum = nextResiduals ? cost(nextResiduals) : Number.NaN;
        const small = change?.every((c, j) => Math.abs(c) <= 1e-10 * Math.abs(parameters[j]!)) === true;
        if (nextSum <= sum) {
            parameters = next!;
            residuals = nextResiduals!;
            slopes = slopesAt(parameters);
            sum = nextSum;
            damping = Math.max(damping / 10, 1e-14);
        } else {
            damping *= 10;
        }
        // A step too small to matter, whether it bettered the sum or was lost in its rounding.
        if (small) break;
    }
    const factored = factor(slopes, residuals, sigmas);
    if (factored === undefined) return undefined;
    const fit = describe(factored, parameters, residuals, sigmas);
    const gain = cost(slopes.map((row) => row.reduce((total, x, j) => total + x * factored.parameters[j]!, 0)));
    const rest = Math.max(0, sum - gain) / Math.max(1, fit.degreesOfFreedom);
    const settled = gain / parameters.length <= RELATIVE_OFFSET * rest || sum <= ROUNDING * cost(y);
    return { ...fit, converged: settled };
}

/** One step: the linearised fit with rows √λ·|column| appended, which hold each parameter back. */
function dampedStep(
    slopes: Rows,
    residuals: readonly number[],
    damping: number,
    sigmas?: readonly number[],
): number[] | undefined {
    const scales = columnLengths(slopes.map((row, i) => row.map((x) => x / (sigmas?.[i] ?? 1))));
    const held = scales.map((scale, j) => scales.map((_, k) => (j === k ? Math.sqrt(damping) * (scale || 1) : 0)));
    const heldSigmas = sigmas && [...sigmas, ...scales.map(() => 1)];
    return factor([...slopes, ...held], [...residuals, ...scales.map(() => 0)], heldSigmas)?.parameters;
}
