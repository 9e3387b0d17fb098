import { allRules } from '../shared/rules/all-rules';
import { allowPage } from '../shared/rules/allow-silences-nothing';
import { couponRules } from '../shared/rules/coupon/examine-coupons';
import type { Page } from '../shared/rules/page';

const trade: ReadonlyMap<string, Page> = new Map(
    [...allRules.map((rule) => rule.page), allowPage].map((page) => [page.id, page]),
);

/** Coupons stand outside of recipes, where there is no `allow`. */
const ofCoupons: ReadonlyMap<string, Page> = new Map(couponRules.map(({ page }) => [page.id, page]));

/** The explanation of a rule, of the trade or of the text. */
export function rulePage(id: string): Page | undefined {
    return trade.get(id) ?? ofCoupons.get(id);
}

/** Whether `allow` can name it: only what the trade says can be a risk worth taking. */
export function isTradeRule(id: string): boolean {
    return trade.has(id) && id !== allowPage.id;
}

/** The rules that `allow` can name. */
export const allowablePages: readonly Page[] = [...trade.values()].filter(({ id }) => isTradeRule(id));

export function allPages(): Page[] {
    return [...trade.values(), ...ofCoupons.values()];
}
