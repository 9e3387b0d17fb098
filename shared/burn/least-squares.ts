import { Matrix, QrDecomposition } from 'ml-matrix';

/** A fit of y ≈ X·b with weights; the arrays are as long as the rows or the parameters. */
export interface Fit {
    readonly parameters: readonly number[];
    /** (XᵀWX)⁻¹, row by row; times `variance` it is the parameters' covariance. */
    readonly spread: readonly number[];
    /** Standard errors of the parameters; undefined without degrees of freedom. */
    readonly errors?: readonly number[];
    /** Residual y − ŷ of each row, in the unit of y. */
    readonly residuals: readonly number[];
    /** Diagonal of the hat matrix: how much a row pulls the fit to itself. */
    readonly leverages: readonly number[];
    readonly freedom: number;
    /** Weighted sum of squared residuals, and that over the degrees of freedom. */
    readonly residualSum: number;
    readonly variance?: number;
}

/**
 * Weighted linear least squares by Householder QR of the column-scaled design (never the normal
 * equations: they lose half the digits). `units` are the rows' relative standard errors.
 * Undefined if the columns depend on each other or anything is not finite.
 */
export function leastSquares(
    rows: readonly (readonly number[])[],
    y: readonly number[],
    units?: readonly number[],
): Fit | undefined {
    const solved = solve(rows, y, units);
    if (solved === undefined) return undefined;
    const { parameters } = solved;
    const residuals = y.map((value, i) => value - rows[i]!.reduce((sum, x, j) => sum + x * parameters[j]!, 0));
    return describe(solved, residuals, units);
}

/** What QR leaves of a design: the solution and the inverse of R, unscaled. */
interface Solved {
    readonly parameters: number[];
    readonly spread: number[];
    readonly leverages: number[];
}

function solve(rows: readonly (readonly number[])[], y: readonly number[], units?: readonly number[]): Solved | undefined {
    const count = rows[0]?.length ?? 0;
    if (count === 0 || rows.length < count) return undefined;
    const weighted = rows.map((row, i) => row.map((x) => x / (units?.[i] ?? 1)));
    const scales = Array.from({ length: count }, (_, j) => Math.hypot(...weighted.map((row) => row[j]!)));
    if (!scales.every((scale) => scale > 0 && Number.isFinite(scale))) return undefined;
    const right = y.map((value, i) => value / (units?.[i] ?? 1));
    if (!right.every(Number.isFinite)) return undefined;

    const qr = new QrDecomposition(new Matrix(weighted.map((row) => row.map((x, j) => x / scales[j]!))));
    const upper = qr.upperTriangularMatrix;
    for (let j = 0; j < count; j++) if (!(Math.abs(upper.get(j, j)) > 1e-10)) return undefined;
    const parameters = qr
        .solve(Matrix.columnVector(right))
        .to1DArray()
        .map((b, j) => b / scales[j]!);
    if (!parameters.every(Number.isFinite)) return undefined;

    const inverse = inverseOfUpper(upper, count);
    const spread: number[] = [];
    for (let i = 0; i < count; i++) {
        for (let j = 0; j < count; j++) {
            let sum = 0;
            for (let k = Math.max(i, j); k < count; k++) sum += inverse.get(i, k) * inverse.get(j, k);
            spread.push(sum / (scales[i]! * scales[j]!));
        }
    }
    const q = qr.orthogonalMatrix;
    const leverages = rows.map((_, i) => {
        let sum = 0;
        for (let j = 0; j < count; j++) sum += q.get(i, j) ** 2;
        return Math.min(1, sum);
    });
    return { parameters, spread, leverages };
}

function inverseOfUpper(upper: Matrix, count: number): Matrix {
    const inverse = Matrix.zeros(count, count);
    for (let j = 0; j < count; j++) {
        inverse.set(j, j, 1 / upper.get(j, j));
        for (let i = j - 1; i >= 0; i--) {
            let sum = 0;
            for (let k = i + 1; k <= j; k++) sum += upper.get(i, k) * inverse.get(k, j);
            inverse.set(i, j, -sum / upper.get(i, i));
        }
    }
    return inverse;
}

function describe(solved: Solved, residuals: readonly number[], units?: readonly number[]): Fit {
    const count = solved.parameters.length;
    const freedom = residuals.length - count;
    const residualSum = residuals.reduce((sum, residual, i) => sum + (residual / (units?.[i] ?? 1)) ** 2, 0);
    const base = { ...solved, residuals, freedom, residualSum };
    if (freedom < 1) return base;
    const variance = residualSum / freedom;
    const errors = solved.parameters.map((_, j) => Math.sqrt(variance * solved.spread[j * count + j]!));
    return { ...base, variance, errors };
}

/** A curve y(x; b): its value and its slopes along each parameter. */
export interface Curve<X> {
    value(x: X, parameters: readonly number[]): number;
    slopes(x: X, parameters: readonly number[]): readonly number[];
}

/**
 * Nonlinear least squares by Levenberg and Marquardt's damped steps, each solved by the same QR
 * (Marquardt, J. SIAM 11:431, 1963; damping by the columns' own scale). Bounded in steps; undefined
 * if the start is not finite or the curve does not hold all parameters apart at the end.
 */
export function nonlinearLeastSquares<X>(
    curve: Curve<X>,
    xs: readonly X[],
    y: readonly number[],
    start: readonly number[],
    units?: readonly number[],
): Fit | undefined {
    const residualsAt = (b: readonly number[]): number[] => xs.map((x, i) => y[i]! - curve.value(x, b));
    const cost = (residuals: readonly number[]): number => residuals.reduce((sum, r, i) => sum + (r / (units?.[i] ?? 1)) ** 2, 0);

    let parameters = [...start];
    let residuals = residualsAt(parameters);
    let sum = cost(residuals);
    if (!Number.isFinite(sum)) return undefined;
    let damping = 1e-3;
    for (let step = 0; step < 500 && damping < 1e16; step++) {
        const slopes = xs.map((x) => [...curve.slopes(x, parameters)]);
        const change = dampedStep(slopes, residuals, damping, units);
        const next = change && parameters.map((b, j) => b + change[j]!);
        const nextResiduals = next && residualsAt(next);
        const nextSum = nextResiduals ? cost(nextResiduals) : Number.NaN;
        if (!(nextSum <= sum)) {
            damping *= 10;
            continue;
        }
        const settled = next!.every((b, j) => Math.abs(b - parameters[j]!) <= 1e-13 * (Math.abs(b) + Number.MIN_VALUE));
        parameters = next!;
        residuals = nextResiduals!;
        sum = nextSum;
        damping = Math.max(damping / 10, 1e-14);
        if (settled) break;
    }
    const slopes = xs.map((x) => [...curve.slopes(x, parameters)]);
    const solved = solve(slopes, residuals, units);
    return solved && describe({ ...solved, parameters }, residuals, units);
}

/** One step: the linearised fit with rows √λ·|column| appended, which hold each parameter back. */
function dampedStep(
    slopes: readonly (readonly number[])[],
    residuals: readonly number[],
    damping: number,
    units?: readonly number[],
): number[] | undefined {
    const count = slopes[0]?.length ?? 0;
    const scales = Array.from({ length: count }, (_, j) => Math.hypot(...slopes.map((row, i) => row[j]! / (units?.[i] ?? 1))));
    const held = scales.map((scale, j) => scales.map((_, k) => (j === k ? Math.sqrt(damping) * (scale || 1) : 0)));
    const heldUnits = units && [...units, ...scales.map(() => 1)];
    return solve([...slopes, ...held], [...residuals, ...scales.map(() => 0)], heldUnits)?.parameters;
}
