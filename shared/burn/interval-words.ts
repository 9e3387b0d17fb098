import type { Interval } from '../quantity/interval';
import { showLength, showRatio } from '../quantity/show';
import type { DepthLaw } from './law';
import type { PieceSpread } from './piece-spread';

/** What the range of a depth or tone is for: one more square on the coupon's board, the mean of a pocket there, or a piece made next. */
type RangeOf = 'square' | 'pocket' | 'piece';

/** Share of cases that a range holds, and of what. */
export interface RangeUse {
    readonly share: number;
    readonly of: RangeOf;
    /** What pieces are taken to differ by, and who says so. */
    readonly pieces?: PieceSpread;
    /** What the squares reach, mm and passes, where the depth lies beyond it. */
    readonly beyond?: { readonly deepest: number; readonly passes: number };
}

const SHARE = 0.95;

/** As many times the deepest square, and the most passes of one, is still near them (own choice). */
const NEAR = { depth: 1.25, passes: 1.5 };

/** What the range of a depth is for that a law gives: the next piece where it knows what pieces differ by, or is a guess. */
export function rangeUse(
    { guess, pieces, rows, power }: Pick<DepthLaw, 'guess' | 'pieces' | 'rows' | 'power'>,
    depth: number,
    passes: number,
): RangeUse {
    const reached = { deepest: Math.max(...rows.map((row) => row.depth)), passes: Math.max(...rows.map((row) => row.passes)) };
    const isFar = depth > NEAR.depth * reached.deepest || passes > NEAR.passes * reached.passes;
    return {
        share: SHARE,
        of: guess || pieces !== undefined ? 'piece' : 'square',
        ...(pieces !== undefined && { pieces }),
        // What runs measured may reach further; without rows it is a guess and says so.
        ...(rows.length > 0 && power === undefined && isFar && { beyond: reached }),
    };
}

const words: Readonly<Record<RangeOf, string>> = {
    square: 'one more square on this board',
    pocket: 'the mean of a pocket in this board',
    piece: 'the next piece of this stock',
};

/** "± 0.08 mm one more square on this board, ± 0.03 mm the mean of a pocket in this board": the other kinds beside that of the next piece. */
export function onBoardMeaning({ square, pocket }: { readonly square: Interval; readonly pocket: Interval }): string {
    const half = ({ value, high }: Interval): string => `± ${showLength(high - value)}`;
    return `${half(square)} ${words.square}, ${half(pocket)} ${words.pocket}`;
}

/**
 * "95 %, the next piece of this stock, boards taken to differ by 8 % as is usual": what stands behind a plus and minus. The only
 * place that says so.
 */
export function rangeMeaning({ share, of, pieces, beyond }: RangeUse): string {
    return [
        `${Number((100 * share).toFixed(1))} %, ${words[of]}`,
        ...(pieces === undefined ? [] : [spreadWords(pieces)]),
        ...(beyond === undefined ? [] : [beyondWords(beyond)]),
    ].join(', ');
}

function beyondWords({ deepest, passes }: NonNullable<RangeUse['beyond']>): string {
    return `no square deeper than ${showLength(deepest)} or of more than ${passes} ${passes === 1 ? 'pass' : 'passes'}: burn one`;
}

function spreadWords({ from, boards, sigma, days }: PieceSpread): string {
    if (from === 'declared') return `boards differ by ${showRatio(boards)} as written`;
    if (from === 'usual') return `boards taken to differ by ${showRatio(boards)} as is usual`;
    return `pieces differ by ${showRatio(sigma)} by ${days} days of runs`;
}
