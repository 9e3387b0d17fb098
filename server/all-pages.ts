import { allRules } from '../shared/rules/all-rules';
import { allowPage } from '../shared/rules/allow-silences-nothing';
import { couponRules } from '../shared/rules/coupon/examine-coupons';
import type { Page } from '../shared/rules/page';

// Nothing but data leaves this file: the build puts it in as such, so that the rules themselves stay in the worker.

/** What `allow` can name. */
export const allowablePages: readonly Page[] = allRules.map(({ page }) => page);

/** What `allow` cannot name: it speaks of `allow` itself, or of coupons, which stand outside of recipes. */
export const otherPages: readonly Page[] = [allowPage, ...couponRules.map(({ page }) => page)];
