import { DAY_TO_DAY, type PowerDay } from './measured-power';

/** How far the next piece may come out from the board that a law was measured on, and who says so. */
export interface PieceSpread {
    /** Standard deviation of the log of the energy that the same depth takes: of boards and days together. */
    readonly sigma: number;
    /** Degrees of freedom where it was estimated; absent where it is declared or usual. */
    readonly freedom?: number;
    readonly from: 'declared' | 'runs' | 'usual';
    /** What boards differ by, as it was declared or is usual. */
    readonly boards: number;
    /** Days of runs that it was learned from. */
    readonly days?: number;
}

/**
 * What another board of a stock differs by from the one that was measured, one standard deviation, where nobody says. What it
 * really is between boards of a wood is not known. @commonPractice
 */
export const USUAL_BOARDS = 0.08;

/** So many days of runs say what boards differ by. */
const DAYS_NEEDED = 4;
/** Days that the usual spread counts for beside those that were seen (own choice). */
const DAYS_ASSUMED = 2;
/** Older ones say little of what is in the rack. */
const LAST_DAYS = 30;

/**
 * Spread of the next piece: as declared (`varies 5 %`), else learned from four days of runs or more, the usual one counting for
 * two, else the usual one. What runs scatter by beyond reading and place is of boards, jobs and days together.
 *
 * @param declared ratio, one standard deviation of boards
 */
export function pieceSpread(declared: number | undefined, days: readonly PowerDay[] = []): PieceSpread {
    const boards = declared ?? USUAL_BOARDS;
    const assumed = { sigma: Math.hypot(boards, DAY_TO_DAY), boards };
    if (declared !== undefined) return { ...assumed, from: 'declared' };
    const seen = days.slice(-LAST_DAYS);
    if (seen.length < DAYS_NEEDED) return { ...assumed, from: 'usual' };
    const mean = seen.reduce((sum, { logFactor }) => sum + logFactor, 0) / seen.length;
    const freedom = seen.length - 1;
    const scatter = seen.reduce((sum, { logFactor }) => sum + (logFactor - mean) ** 2, 0);
    const reading = seen.reduce((sum, { error }) => sum + error ** 2 - DAY_TO_DAY ** 2, 0) / seen.length;
    const own = Math.max(freedom * DAY_TO_DAY ** 2, scatter - freedom * reading);
    const variance = (DAYS_ASSUMED * assumed.sigma ** 2 + own) / (DAYS_ASSUMED + freedom);
    return { sigma: Math.sqrt(variance), boards, freedom: DAYS_ASSUMED + freedom, from: 'runs', days: seen.length };
}
