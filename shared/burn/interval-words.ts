/** What the range of a depth or tone is for: one more square on the coupon's board, the mean of a pocket there, or a piece made next. */
type RangeOf = 'square' | 'pocket' | 'piece';

/** Share of cases that a range holds, and of what. */
export interface RangeUse {
    readonly share: number;
    readonly of: RangeOf;
}

/** What all ranges of depths are told for, where a sheet, a hover or a finding says nothing else. */
export const TOLD_FOR: RangeUse = { share: 0.95, of: 'square' };

const words: Readonly<Record<RangeOf, string>> = {
    square: 'one more square on this board',
    pocket: 'the mean of a pocket in this board',
    piece: 'the next piece of this stock',
};

/** "95 %, one more square on this board": what stands behind a plus and minus. The only place that says so. */
export function rangeMeaning({ share, of }: RangeUse): string {
    return `${Number((100 * share).toFixed(1))} %, ${words[of]}`;
}
