import type { headOf } from '../../../shared/review/head';
import type { Review, reviewSchema } from '../../../shared/review/review';
import type { historySchema, RunHistory } from '../../../shared/review/run-history';
import type { VariantTable } from '../../../shared/review/variant-table';
import type { Page } from '../../../shared/rules/page';
import type { planJson } from '../../../shared/sheets/plan-json';
import type { CouponFit } from '../../../shared/view/coupon-fit';
import type { Season } from '../../../shared/week/season';
import type { weekJson } from '../../../shared/week/week-json';
import type { Word } from '../vocabulary';
import type { checkJson } from './json';

/*
 * What the command line writes as JSON. The JSON Schemas in dist/schemas are made of these types (.config/schemas.mjs), each by the name of
 * its command, so that a schema says what is written and nobody keeps a second list.
 */

export type CheckDocument = ReturnType<typeof checkJson>;

/** One recipe, or a list where there are several. */
export type PlanDocument = ReturnType<typeof planJson> | ReturnType<typeof planJson>[];

export interface DiffDocument {
    readonly schema: typeof reviewSchema;
    /** Counts, stock that changed, and one line a recipe, the worst first. */
    readonly head: ReturnType<typeof headOf>;
    readonly reviews: readonly Review[];
}

export interface HistoryDocument {
    readonly schema: typeof historySchema;
    readonly histories: readonly RunHistory[];
}

export type TableDocument = VariantTable;

export type WeekDocument = ReturnType<typeof weekJson>;

export type SeasonDocument = Season;

/** What a coupon's squares say. */
export interface CurveDocument extends CouponFit {
    readonly schema: 1;
    readonly board: string;
    readonly laser: string;
}

export type ExplainDocument = readonly Page[];

export type VocabularyDocument = readonly Word[];
