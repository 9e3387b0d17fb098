import type { CouponAims, CouponOptions, CouponSheet } from '../../shared/burn/coupon-sheet';
import type { Where } from '../../shared/quantity/where';
import type { Finding } from '../../shared/recipe/finding';
import type { Message } from '../../shared/recipe/phrase';
import type { Recipe } from '../../shared/recipe/recipe';
import type { Laser, MeasuredCoupon, Sheet } from '../../shared/recipe/stock';
import type { ReviewPictures } from '../../shared/review/film-strip';
import type { ReviewNotes } from '../../shared/review/notes';
import type { ReviewPlaces } from '../../shared/review/places';
import type { Review } from '../../shared/review/review';
import type { RunHistory } from '../../shared/review/run-history';
import type { VariantTable } from '../../shared/review/variant-table';
import type { Silenced } from '../../shared/rules/examine-by';
import type { Sheets } from '../../shared/sheets/build-sheets';
import type { LaidWish } from '../../shared/sheets/laid-sheets';
import type { SectionView } from '../../shared/view/bench-view';
import type { CouponFit } from '../../shared/view/coupon-fit';
import type { Hideable } from '../../shared/view/hideable';
import type { Setting } from '../../shared/view/make-bench-view';
import type { PressView } from '../../shared/view/press-view';
import type { Checklist } from '../../shared/view/protocol';
import type { RoundView } from '../../shared/view/round-view';
import type { RunFacts } from '../../shared/view/run-facts';
import type { RunFigures } from '../../shared/view/run-figures';
import type { SentPicture } from '../../shared/view/sent-picture';
import type { StepFigures } from '../../shared/view/step-figures';
import type { ToolpathView } from '../../shared/view/toolpath-view';
import type { BookedPlan } from '../../shared/week/booked-plan';
import type { WeekEntry } from '../../shared/week/entry';
import type { WeekAsked } from '../../shared/week/make-week';
import type { SpentRun } from '../../shared/week/on-hand';
import type { Season, SeasonEntry } from '../../shared/week/season';
import type { Week } from '../../shared/week/week';

/** What is asked of the plan engine. Plain data, since it passes between threads. */
export type Job =
    | { readonly do: 'examine'; readonly recipe: Recipe }
    | { readonly do: 'survey'; readonly recipe: Recipe }
    | CouponJob
    | FitJob
    | RunFactsJob
    | LayoutJob
    | CouponSheetsJob
    | PlaceholderJob
    | PageJob
    | BenchJob
    | { readonly do: 'checklist'; readonly recipe: Recipe }
    | BuildJob
    | JsonJob
    | { readonly do: 'summary'; readonly recipe: Recipe; readonly all?: boolean }
    | { readonly do: 'notes'; readonly recipe: Recipe }
    | ReviewJob
    | ReviewPageJob
    | TableJob
    /** What a week or a season looks at, of one recipe. */
    | { readonly do: 'booked'; readonly recipe: Recipe; readonly start?: number }
    /** What a recipe asks of a coupon. */
    | { readonly do: 'aims'; readonly recipe: Recipe; readonly sheet: string; readonly laser: string }
    | WeekJob
    | SeasonJob
    | HistoryJob
    | { readonly do: 'toolpath'; readonly recipe: Recipe; readonly step: number }
    | { readonly do: 'press'; readonly recipe: Recipe; readonly step: number }
    | ColumnJob
    | SectionJob
    | RoundJob;

/** The picture of a recipe; `soon` before the fixes of its findings have been tried. */
export interface BenchJob {
    readonly do: 'bench';
    readonly recipe: Recipe;
    readonly setting: Setting;
    readonly textFindings: readonly Finding[];
    readonly had?: readonly string[];
    readonly soon?: boolean;
}

/** The files for machine and bench. */
export interface BuildJob {
    readonly do: 'build';
    readonly recipe: Recipe;
    readonly textFindings: readonly Finding[];
    readonly start?: number;
    /** The fingerprint of what recipe and stock say (language/fingerprint). */
    readonly mark?: string;
    /** Only the files of one set-up, for the piece that lies there. */
    readonly laid?: LaidWish;
}

/** @see makeRoundView */
export interface RoundJob {
    readonly do: 'round';
    readonly recipe: Recipe;
    readonly frame: number;
    readonly blank: string;
    readonly hidden: readonly Hideable[];
}

/** @see sectionView */
export interface SectionJob {
    readonly do: 'section';
    readonly recipe: Recipe;
    readonly frame: number;
    readonly blank: string;
    readonly y: number;
}

/** @see columnWords */
export interface ColumnJob {
    readonly do: 'column';
    readonly recipe: Recipe;
    readonly frame: number;
    readonly blank: string;
    readonly x: number;
    readonly y: number;
}

/** @see planJson */
export interface JsonJob {
    readonly do: 'json';
    readonly recipe: Recipe;
    readonly textFindings: readonly Finding[];
    readonly shapes: boolean;
    readonly start?: number;
}

/** A job that needs no recipe worked out, and no art. */
export type PlainJob = CouponJob | FitJob | RunFactsJob | LayoutJob | CouponSheetsJob | PlaceholderJob | PageJob;

/** A job that needs a recipe worked out, with its art. */
export type RecipeJob = Exclude<Job, PlainJob>;

/** A job that looks at the plan of one recipe. */
export type OnePlanJob = Exclude<RecipeJob, ReviewJob | ReviewPageJob | TableJob | WeekJob | SeasonJob | HistoryJob>;

/** The picture that a new recipe begins with, as a PNG file: asked for here, since only here pictures are known. */
export interface PlaceholderJob {
    readonly do: 'placeholder';
}

/** The page of a rule, for somebody who wants to read it. */
export interface PageJob {
    readonly do: 'page';
    readonly rule: string;
}

/** Examines the coupons of a file, which no recipe need use. */
export interface CouponJob {
    readonly do: 'coupons';
    readonly coupons: readonly MeasuredCoupon[];
}

/** Fits one coupon, for somebody who looks at it. */
export interface FitJob {
    readonly do: 'fit';
    readonly coupon: MeasuredCoupon;
}

/** What became of one run of a recipe, for somebody who looks at it. */
export interface RunFactsJob {
    readonly do: 'run-facts';
    readonly recipe: Recipe;
    /** The whole run in its file. */
    readonly run: Where;
}

/** Lays out a new coupon: here, since what its squares may give takes the fit's statistics. */
export interface LayoutJob {
    readonly do: 'coupon-layout';
    readonly material: Sheet;
    readonly laser: Laser;
    readonly options: CouponOptions;
}

/** The files of a coupon that has been laid out. */
export interface CouponSheetsJob {
    readonly do: 'coupon-sheets';
    readonly material: Sheet;
    readonly laser: Laser;
    readonly layout: CouponSheet;
}

/** All that the text editor shows of a recipe: one plan for findings, hints and pins. */
export interface Survey {
    readonly findings: readonly Finding[];
    readonly figures: readonly StepFigures[];
    readonly run?: RunFigures;
}

/** Compares a recipe with an earlier version of it. */
export interface ReviewJob extends VersionAsked {
    readonly do: 'review';
    /** The earlier version, with its art beside it, since the same file may have held something else then. */
    readonly before: VersionAsked & { readonly arts: readonly ArtFile[] };
    readonly pictures: boolean;
    /** How many findings stay is not asked: where both versions are worked out alike, nothing is drawn then. */
    readonly brief?: boolean;
}

/** Reviews of a file's recipes as what stands in a page. */
export interface ReviewPageJob {
    readonly do: 'review-page';
    readonly reviews: readonly ReviewJob[];
}

/** What became of a recipe's runs; as what stands in a page with `history-page`. Needs no art: depths and settings follow from what is written. */
export interface HistoryJob {
    readonly do: 'history' | 'history-page';
    readonly recipe: Recipe;
    /** The recipe as it was when each run was made, by the run's place in the recipe; absent where that is not known. */
    readonly past: readonly (PastRecipe | undefined)[];
    readonly last: number;
}

export interface PastRecipe {
    readonly recipe: Recipe;
    /** It stood so on the day that was asked for; else it is the newest of its issue. */
    readonly isOfDay: boolean;
    /** Where it was found. */
    readonly commit: string;
}

/** Recipes side by side; as what stands in a page with `table-page`. */
export interface TableJob {
    readonly do: 'table' | 'table-page';
    readonly columns: readonly { readonly recipe: Recipe; readonly textFindings: readonly Finding[] }[];
    /** Also what does not differ. */
    readonly all: boolean;
}

/** One book over all that is to be made. */
export interface WeekJob extends WeekAsked {
    readonly do: 'week' | 'week-page';
    /** Each plan is for as many pieces as are wanted. */
    readonly entries: readonly WeekEntry[];
    /** Runs since the stock was counted, each with the plan of as many pieces as were begun. */
    readonly spent: readonly SpentRun[];
}

/** Runs, each with its recipe for as many pieces as were begun. */
export interface SeasonJob {
    readonly do: 'season' | 'season-page';
    readonly runs: readonly SeasonEntry[];
}

/** The recipes of which a job needs the present art. */
export function recipesOf(job: Job): readonly Recipe[] {
    switch (job.do) {
        case 'review-page':
            return job.reviews.map(({ recipe }) => recipe);
        case 'table':
        case 'table-page':
            return job.columns.map(({ recipe }) => recipe);
        default:
            return 'recipe' in job ? [job.recipe] : [];
    }
}

export interface VersionAsked {
    readonly recipe: Recipe;
    /** Where it comes from, for a reader. */
    readonly from: string;
    /** False for an empty recipe that stands for one that is not there. */
    readonly exists: boolean;
    readonly textFindings: readonly Finding[];
}

export interface ReviewAnswer {
    readonly review: Review;
    readonly places: ReviewPlaces;
    readonly pictures?: ReviewPictures;
}

export interface Answers {
    readonly examine: readonly Finding[];
    readonly survey: Survey;
    readonly coupons: readonly Finding[];
    readonly fit: CouponFit;
    readonly 'run-facts': RunFacts;
    readonly 'coupon-layout': CouponSheet | { readonly problem: Message };
    readonly 'coupon-sheets': Sheets;
    readonly placeholder: Uint8Array;
    /** Markdown; null where there is no such rule. */
    readonly page: string | null;
    readonly bench: SentPicture;
    readonly checklist: Checklist;
    readonly build: Sheets;
    readonly json: unknown;
    readonly summary: string;
    readonly notes: { readonly notes: ReviewNotes; readonly silenced: readonly Silenced[] };
    readonly review: ReviewAnswer;
    /** Markup. */
    readonly 'review-page': string;
    readonly table: VariantTable;
    readonly booked: BookedPlan;
    readonly aims: CouponAims | null;
    readonly week: Week;
    readonly 'week-page': string;
    readonly season: Season;
    readonly 'season-page': string;
    readonly history: RunHistory;
    readonly 'history-page': string;
    readonly 'table-page': string;
    readonly section: SectionView | null;
    readonly column: string | null;
    /** In words why not, where there is none. */
    readonly round: RoundView | string;
    readonly toolpath: ToolpathView | null;
    readonly press: PressView | null;
}

export type AnswerTo<J extends Job> = Answers[J['do']];

/** An art file as it was read, or why it was not; `version` changes whenever the content may have. */
export interface ArtFile {
    readonly uri: string;
    readonly version: string;
    readonly bytes?: Uint8Array;
    readonly problem?: 'missing' | 'outside' | 'too-large' | 'unreadable';
}

/** Thrown inside a job when nobody waits for its answer any more. */
export class Cancelled extends Error {
    constructor() {
        super('A newer job has taken its place.');
    }
}
