import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Page } from '../page';
import { finding } from '../rule';
import type { CouponRule } from './coupon-rule';

const page: Page = {
    id: 'coupon-outlier',
    title: 'A square that does not go with the others',
    severities: ['warning'],
    quickFix: 'always',
    condition:
        'The depth measured in a square lies further from the line through the others than chance would have it once in twenty such coupons, and further than a depth can be misread.',
    why: 'One slip of the gauge, a knot, or a speed noted wrongly would bend the line, and every depth worked out from it. Up to every fifth square is therefore left out of the line; where more do not fit, the rest of them bend it.',
    mend: 'Measure the square again, or burn it again. Take the row out only if you know what went wrong with it.',
    source: 'Externally studentised residuals against Student’s t, shared out over the rows (Bonferroni).',
};

export const couponOutlier: CouponRule = {
    page,
    *examine({ coupon, law, rows }) {
        for (const [index, row] of law.rows.entries()) {
            const where = rows[index]?.where;
            if (!row.outlier || where === undefined) continue;
            const unit = coupon.burns.find((burn) => burn.where.offset === where.offset)?.depth.unit;
            yield finding(page, {
                severity: 'warning',
                message: phrase`This square was measured ${showLength(row.depth, unit)} deep; by the others it should be ${showLength(row.fitted, unit)}.${row.leftOut === true ? phrase` It is left out until it is measured again.` : ''}`,
                where,
                fixes: [{ title: phrase`Take this square out`, changes: [{ do: 'remove', where }] }],
            });
        }
    },
};
