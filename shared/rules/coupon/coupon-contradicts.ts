import type { LawRow } from '../../burn/law';
import { phrase } from '../../recipe/phrase';
import { addSquare } from '../helpers/settle-by-square';
import { settingsOf } from '../helpers/square-of';
import type { Page } from '../page';
import { finding } from '../rule';
import type { CouponRule } from './coupon-rule';
import { asSet } from './squares-disagree';

const page: Page = {
    id: 'coupon-contradicts',
    title: 'More dose, less depth',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: 'On the whole, the squares that were burnt with more dose came out shallower.',
    why: 'No wood does that, so speeds, powers or depths are noted at the wrong squares, or the coupon was not in focus. No line can be laid through it: the depths lean on a guess from density.',
    mend: 'Compare the rows with the labels burnt beside the squares, and measure again.',
    source: 'Our own comparison of the rows’ doses and depths.',
};

export const couponContradicts: CouponRule = {
    page,
    *examine({ coupon, law, laser }) {
        if (!law.notes.includes('falls-with-dose')) return;
        // The strongest square should be the deepest: burnt again, it says whether the rows or the wood are at fault.
        const strongest = law.rows.reduce<LawRow | undefined>((most, row) => (ofAll(row) > ofAll(most) ? row : most), undefined);
        const square = strongest && asSet(strongest, laser);
        const again =
            square === undefined
                ? ''
                : phrase` Burn the strongest again, with ${settingsOf(square)}: if it comes out deeper, its row is wrong.`;
        yield finding(page, {
            severity: 'warning',
            message: phrase`The squares with more dose came out shallower: rows and squares are mixed up, or the coupon was out of focus.${again}`,
            where: coupon.where,
            fixes: square === undefined ? [] : addSquare(coupon, square),
        });
    },
};

/** Dose of all passes. */
function ofAll(row: LawRow | undefined): number {
    return row === undefined ? 0 : row.dose * row.passes;
}
