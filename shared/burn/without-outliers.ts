import { coverageFactor } from './distributions';
import { depthOf, doseOf } from './dose';
import { type Problem, readingOf } from './fit-problem';
import {
    type DepthLaw,
    depthSlopes,
    type LawRow,
    lawCovariance,
    measuringError,
    pooledDegreesOfFreedom,
    squareVariance,
} from './law';
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
    const lawOfOthers = (kept: readonly BurnRow[], at: number): DepthLaw | undefined => {
        const without = kept.filter((_, other) => other !== at);
        const refitted = fitAlone({ ...problem, rows: without, doses: without.map(doseOf) });
        return refitted === 'not-converged' ? undefined : refitted;
    };
    const most = Math.max(1, Math.floor(rows.length / SQUARES_FOR_ONE));
    const out = new Map<BurnRow, number>();
    let [left, kept] = [law, [...rows]];
    while (out.size < most) {
        const flagged = farthest(left.rows);
        const others = flagged === undefined ? undefined : lawOfOthers(kept, flagged.at);
        const isFar = others !== undefined && isFarFrom(others, kept[flagged!.at]!);
        const worst = isFar ? { ...flagged!, others } : bendsFade(left, kept, lawOfOthers);
        if (worst === undefined) break;
        out.set(kept[worst.at]!, worst.studentised);
        [left, kept] = [worst.others, kept.filter((_, at) => at !== worst.at)];
    }
    if (out.size === 0) return law;
    return { ...left, rows: withOutliers(rows, left, kept, out), notes: [...new Set([...left.notes, 'outliers' as const])] };
}

/**
 * A square of more passes than the others pulls the fade so strongly that it seems to fit. Where the fade then comes out beyond what can be,
 * each square is held against the law of the others: the farthest is the slip, if without it the fade is one that can be. The deviation
 * is over its own standard error, that of the others' law and of a fade that none of them tells included.
 */
function bendsFade(
    law: DepthLaw,
    kept: readonly BurnRow[],
    lawOfOthers: (kept: readonly BurnRow[], at: number) => DepthLaw | undefined,
): { at: number; studentised: number; others: DepthLaw } | undefined {
    if (!law.notes.includes('fade-held')) return undefined;
    let found: { at: number; studentised: number; others: DepthLaw } | undefined;
    for (const [at, row] of kept.entries()) {
        if (row.passes === 1) continue;
        const others = lawOfOthers(kept, at);
        if (others === undefined || others.notes.includes('fade-held') || !isFarFrom(others, row)) continue;
        const place = { dose: doseOf(row), passes: row.passes };
        const fitted = depthOf(others, place.dose, place.passes);
        const fade = depthSlopes(others, place.dose, place.passes)[2] * others.fadeAssumed;
        const error = Math.sqrt(squareVariance(others, fitted) + lawCovariance(others, place, place) + fade ** 2);
        const studentised = (row.depth - fitted) / error;
        // Shared out over all squares, as where each is held against the law of all.
        const limit = coverageFactor(1 - 0.05 / kept.length, pooledDegreesOfFreedom(others));
        if (Math.abs(studentised) > Math.max(limit, Math.abs(found?.studentised ?? 0))) found = { at, studentised, others };
    }
    return found;
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
