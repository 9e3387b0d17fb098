import { Matrix, QrDecomposition } from 'ml-matrix';

/** A fit of y ≈ X·b with weights; the arrays are as long as the rows or the parameters. */
export interface Fit {
    readonly parameters: readonly number[];
    /** (XᵀWX)⁻¹, row by row; times `variance` it is the parameters' covariance. */
    readonly unscaledCovariance: readonly number[];
    /** Standard errors of the parameters; undefined without degrees of freedom. */
    readonly errors?: readonly number[];
    /** Residual y − ŷ of each row, in the unit of y. */
    readonly residuals: readonly number[];
    /** Diagonal of the hat matrix: how much a row pulls the fit to itself. */
    readonly leverages: readonly number[];
    readonly degreesOfFreedom: number;
    /** Weighted sum of squared residuals, and that over the degrees of freedom. */
    readonly residualSum: number;
    readonly variance?: number;
}

/**
 * Weighted linear least squares by Householder QR of the column-scaled design (never the normal
 * equations: they lose half the digits). `sigmas` are the rows' relative standard errors.
 * Undefined if the columns depend on each other or anything is not finite.
 */
export function leastSquares(rows: Rows, y: readonly number[], sigmas?: readonly number[]): Fit | undefined {
    const factored = factor(rows, y, sigmas);
    if (factored === undefined) return undefined;
    const { parameters } = factored;
    const residuals = y.map((value, i) => value - rows[i]!.reduce((sum, x, j) => sum + x * parameters[j]!, 0));
    return describe(factored, parameters, residuals, sigmas);
}

export type Rows = readonly (readonly number[])[];

/** The solution, and the QR of the design with its columns scaled to length one. */
export interface Factored {
    readonly parameters: number[];
    readonly scales: readonly number[];
    readonly qr: QrDecomposition;
}

export function factor(rows: Rows, y: readonly number[], sigmas?: readonly number[]): Factored | undefined {
    const count = rows[0]?.length ?? 0;
    if (count === 0 || rows.length < count) return undefined;
    const weighted = rows.map((row, i) => row.map((x) => x / (sigmas?.[i] ?? 1)));
    const scales = columnLengths(weighted);
    if (!scales.every((scale) => scale > 0 && Number.isFinite(scale))) return undefined;
    const right = y.map((value, i) => value / (sigmas?.[i] ?? 1));
    if (!right.every(Number.isFinite)) return undefined;

    const qr = new QrDecomposition(new Matrix(weighted.map((row) => row.map((x, j) => x / scales[j]!))));
    const upper = qr.upperTriangularMatrix;
    for (let j = 0; j < count; j++) if (!(Math.abs(upper.get(j, j)) > 1e-10)) return undefined;
    const solution = qr.solve(Matrix.columnVector(right));
    const parameters = scales.map((scale, j) => solution.get(j, 0) / scale);
    return parameters.every(Number.isFinite) ? { parameters, scales, qr } : undefined;
}

export function columnLengths(rows: Rows): number[] {
    return (rows[0] ?? []).map((_, j) => Math.hypot(...rows.map((row) => row[j]!)));
}

/** (XᵀWX)⁻¹, from the inverse of R. */
function invertNormalMatrix({ scales, qr }: Factored): number[] {
    const count = scales.length;
    const inverse = inverseOfUpper(qr.upperTriangularMatrix, count);
    const unscaledCovariance: number[] = [];
    for (let i = 0; i < count; i++) {
        for (let j = 0; j < count; j++) {
            let sum = 0;
            for (let k = Math.max(i, j); k < count; k++) sum += inverse.get(i, k) * inverse.get(j, k);
            unscaledCovariance.push(sum / (scales[i]! * scales[j]!));
        }
    }
    return unscaledCovariance;
}

function leveragesOf({ scales, qr }: Factored, rows: number): number[] {
    const q = qr.orthogonalMatrix;
    return Array.from({ length: rows }, (_, i) =>
        Math.min(
            1,
            scales.reduce((sum, _scale, j) => sum + q.get(i, j) ** 2, 0),
        ),
    );
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

/** The fit that a factored design and its residuals make. */
export function describe(
    factored: Factored,
    parameters: readonly number[],
    residuals: readonly number[],
    sigmas?: readonly number[],
): Fit {
    const count = parameters.length;
    const degreesOfFreedom = residuals.length - count;
    const residualSum = residuals.reduce((sum, residual, i) => sum + (residual / (sigmas?.[i] ?? 1)) ** 2, 0);
    const unscaledCovariance = invertNormalMatrix(factored);
    const base = {
        parameters,
        unscaledCovariance,
        residuals,
        leverages: leveragesOf(factored, residuals.length),
        degreesOfFreedom,
        residualSum,
    };
    if (degreesOfFreedom < 1) return base;
    const variance = residualSum / degreesOfFreedom;
    return { ...base, variance, errors: parameters.map((_, j) => Math.sqrt(variance * unscaledCovariance[j * count + j]!)) };
}
