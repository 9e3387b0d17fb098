import type { Page } from '../shared/rules/page';

/** What the language is told from outside: it knows neither the trade's rules nor any file by itself. */
export interface Outside {
    /** The rules that `allow` can name. Without them every id passes unexamined. */
    readonly tradePages?: readonly Page[];
}

export interface OutsideServices {
    readonly pages: ReadonlyMap<string, Page>;
    readonly ruleIds: ReadonlySet<string>;
}

export function outsideServices({ tradePages = [] }: Outside): OutsideServices {
    const pages = new Map(tradePages.map((page) => [page.id, page]));
    return { pages, ruleIds: new Set(pages.keys()) };
}
