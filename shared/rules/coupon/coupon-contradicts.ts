import { phrase } from '../../recipe/phrase';
import type { Page } from '../page';
import { finding } from '../rule';
import type { CouponRule } from './coupon-rule';

const page: Page = {
    id: 'coupon-contradicts',
    title: 'More dose, less depth',
    severities: ['warning'],
    condition: 'On the whole, the squares that were burnt with more dose came out shallower.',
    why: 'No wood does that, so speeds, powers or depths are noted at the wrong squares, or the coupon was not in focus. No line can be laid through it: the depths lean on a guess from density.',
    mend: 'Compare the rows with the labels burnt beside the squares, and measure again.',
    source: 'Our own comparison of the rows’ doses and depths.',
};

export const couponContradicts: CouponRule = {
    page,
    *examine({ coupon, law }) {
        if (!law.notes.includes('falls-with-dose')) return;
        yield finding(page, {
            severity: 'warning',
            message: phrase`The squares with more dose came out shallower: rows and squares are mixed up, or the coupon was out of focus.`,
            where: coupon.where,
        });
    },
};
