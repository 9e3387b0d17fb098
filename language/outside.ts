import type { ArtNames } from '../shared/art/art-names';
import type { Page } from '../shared/rules/page';
import type { PlannedRun, PlannedStep } from './planned/planned-step';

/** What the language is told from outside: it knows neither the trade's rules nor any file by itself. */
export interface Outside {
    /** The rules that `allow` can name. Without them every id passes unexamined. */
    readonly tradePages?: readonly Page[];
    /** What the last plan of a file said of its steps. */
    readonly planned?: (uri: string) => readonly PlannedStep[];
    /** What the last plan of a file said of its recipes' runs. */
    readonly runs?: (uri: string) => readonly PlannedRun[];
    /** Ids and classes of an art file; undefined for one that cannot be read. Never throws. */
    readonly artNames?: (uri: string) => Promise<ArtNames | undefined>;
}

export interface OutsideServices {
    readonly pages: ReadonlyMap<string, Page>;
    readonly ruleIds: ReadonlySet<string>;
    readonly planned: (uri: string) => readonly PlannedStep[];
    readonly runs: (uri: string) => readonly PlannedRun[];
    readonly artNames: (uri: string) => Promise<ArtNames | undefined>;
}

export function outsideServices({
    tradePages = [],
    planned = () => [],
    runs = () => [],
    artNames = async () => undefined,
}: Outside): OutsideServices {
    const pages = new Map(tradePages.map((page) => [page.id, page]));
    return { pages, ruleIds: new Set(pages.keys()), planned, runs, artNames };
}
