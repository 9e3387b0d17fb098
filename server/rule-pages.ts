import { textPages } from '../language/findings/pages';
import type { Page } from '../shared/rules/page';
import { allowablePages, otherPages } from './all-pages';

const allowable: ReadonlySet<string> = new Set(allowablePages.map(({ id }) => id));
const pages: ReadonlyMap<string, Page> = new Map([...allowablePages, ...otherPages, ...textPages].map((page) => [page.id, page]));

/** The explanation of a rule, of the trade or of the text. */
export function rulePage(id: string): Page | undefined {
    return pages.get(id);
}

/** Whether `allow` can name it: only what the trade says can be a risk worth taking. */
export function isTradeRule(id: string): boolean {
    return allowable.has(id);
}

export function allPages(): Page[] {
    return [...pages.values()];
}
