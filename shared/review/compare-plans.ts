import type { Memo } from '../plan/memo';
import type { Plan } from '../plan/plan';
import type { Finding } from '../recipe/finding';
import type { ArtDifference } from './art-difference';
import { changesOf } from './change';
import { compareAllows } from './compare-allows';
import { compareFindings } from './compare-findings';
import { compareRuns } from './compare-runs';
import { compareSteps } from './compare-steps';
import { compareSupplies } from './compare-supplies';
import { compareThings } from './compare-things';
import type { DrawnParts } from './drawn-parts';
import type { Figure } from './figure';
import { type Match, matchSteps } from './match-steps';
import { guesses } from './notes';
import { pinnedSettings } from './pinned';
import { type ReviewPlaces, reviewPlaces } from './places';
import { costFigures, recipeFigures, runFigures, timeFigures } from './recipe-figures';
import { type Review, reviewSchema, type Side } from './review';

/** One version of a recipe with all that is to be compared. */
export interface Version {
    /** Where it comes from, for a reader: a file, a revision. */
    readonly from: string;
    /** Whether there is such a recipe at all; if not, the plan is that of an empty one. */
    readonly exists: boolean;
    readonly plan: Plan;
    readonly findings: readonly Finding[];
}

/** A review together with what a picture of it is drawn from. */
export interface Comparison {
    readonly review: Review;
    readonly places: ReviewPlaces;
    readonly matches: readonly Match[];
    readonly art: readonly ArtDifference[];
}

/**
 * Sets two versions of a recipe beside each other. Comparing B with A gives the mirror image.
 * @param drawn tells of what is drawn; of two sketches (`plan/sketch.ts`) there is nothing to tell
 */
export function comparePlans(before: Version, after: Version, memo: Memo, drawn?: DrawnParts): Comparison {
    const matches = matchSteps(before.plan.recipe.steps, after.plan.recipe.steps);
    const art = drawn?.artDifferences(before.plan, after.plan, memo) ?? [];
    const { findings, kept, places: findingPlaces } = compareFindings(before, after, matches);
    const { allows, places: allowPlaces } = compareAllows(before.plan, after.plan, matches);
    const found = {
        schema: reviewSchema,
        before: side(before),
        after: side(after),
        recipe: changesOf(heading(before), heading(after)),
        things: compareThings(before.plan, after.plan, memo),
        steps: compareSteps(before.plan, after.plan, matches, drawn),
        art: art.map((each) => each.review),
        times: changesOf(timeFigures(before.plan.totals), timeFigures(after.plan.totals)),
        run: changesOf(whole(before), whole(after)),
        supplies: compareSupplies(before.plan, after.plan),
        cost: changesOf(costFigures(before.plan.cost), costFigures(after.plan.cost)),
        runs: compareRuns(before.plan.recipe, after.plan.recipe),
        findings,
        findingsKept: kept,
        allows,
        guesses: { before: guesses(before.plan, memo), after: guesses(after.plan, memo) },
        pinned: { before: pinnedSettings(before.plan, memo), after: pinnedSettings(after.plan, memo) },
        cautions: {
            gained: without(after.plan.cautions, before.plan.cautions),
            lost: without(before.plan.cautions, after.plan.cautions),
        },
    } satisfies Omit<Review, 'same'>;
    const review = { ...found, same: before.exists === after.exists && isSame(found) };
    return { review, places: reviewPlaces(after, review, { findings: findingPlaces, allows: allowPlaces }), matches, art };
}

/** Whether nothing is left of a comparison that anybody would be told. */
export function isSame(review: Omit<Review, 'same'>): boolean {
    const { recipe, things, art, times, run, supplies, cost, runs, findings, cautions } = review;
    const lists: readonly (readonly unknown[])[] = [
        recipe,
        things,
        art,
        times,
        run,
        supplies,
        cost,
        runs,
        findings,
        cautions.gained,
        cautions.lost,
    ];
    return (
        lists.every((list) => list.length === 0) &&
        review.steps.every(({ status, moved }) => status === 'same' && !moved) &&
        review.allows.every(({ status }) => status === 'same')
    );
}

function side({ from, exists, plan: { recipe } }: Version): Side {
    return { from, ...(exists && { recipe: recipe.name }), title: recipe.title, revision: recipe.revision };
}

function heading({ exists, plan }: Version): Figure[] {
    return exists ? recipeFigures(plan.recipe) : [];
}

function whole({ exists, plan }: Version): Figure[] {
    return exists ? runFigures(plan) : [];
}

function without(list: readonly string[], other: readonly string[]): string[] {
    return list.filter((each) => !other.includes(each));
}
