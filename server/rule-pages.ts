import { textPages } from '../language/findings/pages';
import type { Page } from '../shared/rules/page';
import { tradePages } from '../shared/rules/trade-pages';

const pages: ReadonlyMap<string, Page> = new Map([...tradePages, ...textPages].map((page) => [page.id, page]));

/** The explanation of a rule, of the trade or of the text. All rules hang on it: the language server asks its worker instead. */
export function rulePage(id: string): Page | undefined {
    return pages.get(id);
}

export function allPages(): Page[] {
    return [...pages.values()];
}
