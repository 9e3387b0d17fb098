import type { DepthLaw } from '../../burn/law';
import type { BurnRow } from '../../burn/rows';
import type { Finding } from '../../recipe/finding';
import type { MeasuredCoupon } from '../../recipe/stock';
import type { Page } from '../page';

/** A coupon with its fit; `rows` are those of the fit, in its order, with the places where they stand. */
export interface FittedCoupon extends MeasuredCoupon {
    readonly law: DepthLaw;
    readonly rows: readonly BurnRow[];
}

/** One thing that is noticed of a coupon, whether a recipe uses it or not. */
export interface CouponRule {
    readonly page: Page;
    examine(fitted: FittedCoupon): Iterable<Finding>;
}
