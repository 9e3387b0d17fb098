import { showRatio } from '../quantity/show';
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
}

const SHARE = 0.95;

/** What the range of a depth is for that a law gives: the next piece where it knows what pieces differ by, or is a guess. */
export function rangeUse({ guess, pieces }: Pick<DepthLaw, 'guess' | 'pieces'>): RangeUse {
    return { share: SHARE, of: guess || pieces !== undefined ? 'piece' : 'square', ...(pieces !== undefined && { pieces }) };
}

const words: Readonly<Record<RangeOf, string>> = {
    square: 'one more square on this board',
    pocket: 'the mean of a pocket in this board',
    piece: 'the next piece of this stock',
};

/**
 * "95 %, the next piece of this stock, boards taken to differ by 8 % as is usual": what stands behind a plus and minus. The only
 * place that says so.
 */
export function rangeMeaning({ share, of, pieces }: RangeUse): string {
    const meaning = `${Number((100 * share).toFixed(1))} %, ${words[of]}`;
    return pieces === undefined ? meaning : `${meaning}, ${spreadWords(pieces)}`;
}

function spreadWords({ from, boards, sigma, days }: PieceSpread): string {
    if (from === 'declared') return `boards differ by ${showRatio(boards)} as written`;
    if (from === 'usual') return `boards taken to differ by ${showRatio(boards)} as is usual`;
    return `pieces differ by ${showRatio(sigma)} by ${days} days of runs`;
}
