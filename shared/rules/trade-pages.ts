import { allRules } from './all-rules';
import { allowPage } from './allow-silences-nothing';
import { couponRules } from './coupon/examine-coupons';
import type { Page } from './page';

/** The pages of all that the trade says; the last cannot be allowed: of `allow` itself, and of coupons, which stand outside of recipes. */
export const tradePages: readonly Page[] = [
    ...allRules.map(({ page }) => page),
    allowPage,
    ...couponRules.map(({ page }) => page),
];
