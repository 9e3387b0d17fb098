import type { LawRow } from '../../burn/law';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Page } from '../page';
import { finding } from '../rule';
import type { CouponRule } from './coupon-rule';

const page: Page = {
    id: 'squares-off-law',
    title: 'Wood that does not follow the line',
    severities: ['warning'],
    condition:
        'Squares burnt twice with the same settings agree with each other, and lie further off the line through all squares than chance would have it once in a hundred coupons, and by more than half of what a depth can be misread.',
    why: 'Then it is not the gauge: the wood digs otherwise than in proportion to the dose. Char shields it in strong passes, the beam leaves its focus, or the power does not go with the setting. More squares of the same settings make such a line no truer, so depths get wider ranges.',
    mend: 'Keep squares near the dose and the passes that you work with, and take those far from it out of this coupon. Measure the power with `set … gives …` in the laser’s block where settings were changed between squares.',
    source: 'Pure error against lack of fit, F test: NIST/SEMATECH e-Handbook of Statistical Methods, 4.6.1 (its worked example is among our tests). One in a hundred, and half a measuring error, are our own choice.',
};

export const squaresOffLaw: CouponRule = {
    page,
    *examine({ coupon, law, rows }) {
        const { fits } = law;
        if (!law.notes.includes('off-law') || fits === undefined) return;
        const worst = farthestTwin(law.rows);
        const where = worst && rows[law.rows.indexOf(worst)]?.where;
        const unit = coupon.burns.find((burn) => burn.where.offset === where?.offset)?.depth.unit;
        const example =
            worst === undefined
                ? ''
                : phrase` This one was measured ${showLength(worst.depth, unit)} deep, as others of its settings were, and the line says ${showLength(worst.fitted, unit)}.`;
        yield finding(page, {
            severity: 'warning',
            message: phrase`Squares burnt alike agree, but lie off the line: wood does not follow it here, and depths get wider ranges.${example} Keep squares near the doses that you work with.`,
            where: where ?? coupon.where,
        });
    },
};

/** Of the squares that were burnt more than once, the one that lies farthest off the line as a part of its depth. */
function farthestTwin(rows: readonly LawRow[]): LawRow | undefined {
    const isTwin = (row: LawRow): boolean =>
        rows.some(
            (other) => other !== row && other.power === row.power && other.speed === row.speed && other.passes === row.passes,
        );
    const off = ({ residual, fitted, depth }: LawRow): number => Math.abs(residual) / Math.max(fitted, depth, 0.05);
    return rows
        .filter(isTwin)
        .toSorted((a, b) => off(b) - off(a))
        .at(0);
}
