import { fitCoupon } from '../../burn/fit';
import { rowsOf } from '../../burn/rows';
import type { Finding } from '../../recipe/finding';
import type { MeasuredCoupon } from '../../recipe/stock';
import { couponContradicts } from './coupon-contradicts';
import { couponOutlier } from './coupon-outlier';
import type { CouponRule, FittedCoupon } from './coupon-rule';
import { fewCouponRows } from './few-coupon-rows';
import { squaresDisagree } from './squares-disagree';
import { squaresOffLaw } from './squares-off-law';

export const couponRules: readonly CouponRule[] = [
    couponOutlier,
    couponContradicts,
    squaresOffLaw,
    squaresDisagree,
    fewCouponRows,
];

export function fitMeasured(measured: MeasuredCoupon): FittedCoupon {
    const { coupon, laser, sheet } = measured;
    return { ...measured, law: fitCoupon(coupon, laser, sheet.wood), rows: rowsOf(coupon, laser).rows };
}

/** What the coupons of a file say of themselves. No `allow` reaches them: a coupon is no decision. */
export function examineCoupons(coupons: readonly MeasuredCoupon[]): Finding[] {
    return coupons.map(fitMeasured).flatMap((fitted) => couponRules.flatMap((rule) => [...rule.examine(fitted)]));
}
