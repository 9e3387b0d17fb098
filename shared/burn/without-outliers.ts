import { depthOf, doseOf } from './dose';
import { type Problem, readingOf } from './fit-problem';
import { type DepthLaw, type LawRow, measuringError } from './law';
import type { BurnRow } from './rows';

/** Of how many squares one may be left out: where more do not go with the others, nobody can say which are the others (own choice). */
const SQUARES_FOR_ONE = 5;
/** Only what lies as many measuring errors off is no square of this wood: less may be so, however well the others fit (own choice). */
const ERRORS_OFF = 3;

/**
 * The law without the squares that do not go with the others: the farthest is left out and the rest fitted anew, until none is far or
 * every fifth has gone. They stay among its rows, named, with what the others say of them. `fitAlone` gives the law of rows that stand
 * alone, and anything else where they no longer do.
 */
export function lawWithoutOutliers(
    problem: Problem,
    law: DepthLaw,
    fitAlone: (problem: Problem) => DepthLaw | 'not-converged' | undefined,
): DepthLaw {
    const { rows } = problem;
    const most = Math.max(1, Math.floor(rows.length / SQUARES_FOR_ONE));
    const out = new Map<BurnRow, number>();
    let [left, kept] = [law, [...rows]];
    while (out.size < most) {
        const worst = farthest(left.rows);
        if (worst === undefined) break;
        const without = kept.filter((_, at) => at !== worst.at);
        const refitted = fitAlone({ ...problem, rows: without, doses: without.map(doseOf) });
        if (refitted === undefined || refitted === 'not-converged' || !isFarFrom(refitted, kept[worst.at]!)) break;
        out.set(kept[worst.at]!, worst.studentised);
        [left, kept] = [refitted, without];
    }
    if (out.size === 0) return law;
    return { ...left, rows: withOutliers(rows, left, kept, out), notes: [...new Set([...left.notes, 'outliers' as const])] };
}

function isFarFrom(law: DepthLaw, row: BurnRow): boolean {
    const others = depthOf(law, doseOf(row), row.passes);
    return Math.abs(row.depth - others) > ERRORS_OFF * measuringError(others, readingOf(row));
}

function farthest(rows: readonly LawRow[]): { at: number; studentised: number } | undefined {
    let found: { at: number; studentised: number } | undefined;
    for (const [at, { outlier, studentised = 0 }] of rows.entries()) {
        if (outlier && Math.abs(studentised) > Math.abs(found?.studentised ?? 0)) found = { at, studentised };
    }
    return found;
}

/** All rows in their order, those that were left out held against the law of the others. */
function withOutliers(
    rows: readonly BurnRow[],
    law: DepthLaw,
    kept: readonly BurnRow[],
    out: ReadonlyMap<BurnRow, number>,
): LawRow[] {
    const fitted = new Map(kept.map((row, at) => [row, law.rows[at]!]));
    return rows.map((row) => {
        const known = fitted.get(row);
        if (known !== undefined) return known;
        const dose = doseOf(row);
        const depth = depthOf(law, dose, row.passes);
        const studentised = out.get(row) ?? 0;
        return { ...row, dose, fitted: depth, residual: row.depth - depth, studentised, outlier: true, leftOut: true };
    });
}
