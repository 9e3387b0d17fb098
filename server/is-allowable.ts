import { allowablePages } from './all-pages';

const allowable: ReadonlySet<string> = new Set(allowablePages.map(({ id }) => id));

/** Whether `allow` can name a rule: only what the trade says can be a risk worth taking. */
export function isAllowable(rule: string): boolean {
    return allowable.has(rule);
}
