import type { LangiumDocument } from 'langium';
import type { ExecuteCommandHandler } from 'langium/lsp';
import type { Diagnostic } from 'vscode-languageserver-types';
import type { ArtNames } from '../shared/art/art-names';
import type { Where } from '../shared/quantity/where';
import type { Recipe } from '../shared/recipe/recipe';
import type { MeasuredCoupon } from '../shared/recipe/stock';
import type { PageHead } from '../shared/rules/page';
import type { CouponFit } from '../shared/view/coupon-fit';
import type { RunFacts } from '../shared/view/run-facts';
import type { PlannedRun, PlannedStep } from './planned/planned-step';

/** What the language is told from outside: it knows neither the trade's rules nor any file by itself. */
export interface Outside {
    /** The rules that `allow` can name. Without them every id passes unexamined. */
    readonly tradePages?: readonly PageHead[];
    /** What the last plan of a file said of its steps. */
    readonly planned?: (uri: string) => readonly PlannedStep[];
    /** What the last plan of a file said of its recipes' runs. */
    readonly runs?: (uri: string) => readonly PlannedRun[];
    /** All that is known of a file at this moment; undefined where only those who ask know. */
    readonly diagnostics?: (document: LangiumDocument) => readonly Diagnostic[] | undefined;
    /** Ids and classes of an art file; undefined for one that cannot be read. Never throws. */
    readonly artNames?: (uri: string) => Promise<ArtNames | undefined>;
    /** The day on the wall, ISO 8601: `2026-11-30`. Without it no day is known to be still to come. */
    readonly today?: () => string;
    /** Whether what holds without being written is shown as a hint. */
    readonly showsDefaults?: () => boolean;
    /** What the squares of a coupon say; undefined where nobody waits for it any more. Never throws. */
    readonly couponFit?: (coupon: MeasuredCoupon) => Promise<CouponFit | undefined>;
    /** What became of the run of a recipe at a place; undefined where nobody waits for it any more. Never throws. */
    readonly runFacts?: (recipe: Recipe, run: Where) => Promise<RunFacts | undefined>;
    /** What an editor can have done by name. */
    readonly commands?: ExecuteCommandHandler;
    /** The page of a rule as Markdown; undefined where nobody waits for it any more. Never throws. */
    readonly rulePage?: (rule: string) => Promise<string | undefined>;
}

export interface OutsideServices {
    readonly pages: ReadonlyMap<string, PageHead>;
    readonly ruleIds: ReadonlySet<string>;
    readonly planned: (uri: string) => readonly PlannedStep[];
    readonly runs: (uri: string) => readonly PlannedRun[];
    readonly diagnostics: (document: LangiumDocument) => readonly Diagnostic[] | undefined;
    readonly artNames: (uri: string) => Promise<ArtNames | undefined>;
    readonly couponFit: (coupon: MeasuredCoupon) => Promise<CouponFit | undefined>;
    readonly runFacts: (recipe: Recipe, run: Where) => Promise<RunFacts | undefined>;
    readonly rulePage: (rule: string) => Promise<string | undefined>;
    readonly today: () => string | undefined;
    readonly showsDefaults: () => boolean;
}

export function outsideServices({
    tradePages = [],
    planned = () => [],
    runs = () => [],
    diagnostics = () => undefined,
    artNames = async () => undefined,
    couponFit = async () => undefined,
    runFacts = async () => undefined,
    rulePage = async () => undefined,
    today,
    showsDefaults = () => true,
}: Outside): OutsideServices {
    const pages = new Map(tradePages.map((page) => [page.id, page]));
    return {
        pages,
        ruleIds: new Set(pages.keys()),
        planned,
        runs,
        diagnostics,
        artNames,
        couponFit,
        runFacts,
        rulePage,
        today: today ?? (() => undefined),
        showsDefaults,
    };
}
