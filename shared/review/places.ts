import type { Plan } from '../plan/plan';
import type { Where } from '../quantity/where';
import type { Recipe } from '../recipe/recipe';
import { byDay } from './compare-runs';
import type { Review } from './review';
import { writtenPlaces } from './written';

/**
 * Where what a review speaks of stands in the later version's text, beside the review's own lists. Absent
 * for what only the earlier version has, and for stock, which stands in files of its own.
 */
export interface ReviewPlaces {
    readonly recipe?: Where;
    /** By thing: "blank tray", "run 2026-11-20". */
    readonly things: Readonly<Record<string, BlockPlaces>>;
    readonly steps: readonly (BlockPlaces | undefined)[];
    readonly art: Readonly<Record<string, Where>>;
    readonly findings: readonly (Where | undefined)[];
    readonly allows: readonly (Where | undefined)[];
}

export interface BlockPlaces {
    /** The word that stands for all of it. */
    readonly at: Where;
    /** Its lines, by their label. */
    readonly lines: Readonly<Record<string, Where>>;
}

export function reviewPlaces(
    { plan, exists }: { readonly plan: Plan; readonly exists: boolean },
    review: Review,
    found: Pick<ReviewPlaces, 'findings' | 'allows'>,
): ReviewPlaces {
    const { recipe } = plan;
    return {
        ...(exists && { recipe: recipe.where }),
        things: Object.fromEntries([
            ...recipe.blanks.map((blank) => [`blank ${blank.name}`, placesOf(blank, recipe)] as const),
            ...[...byDay(recipe.runs)].map(([name, run]) => [name, { at: run.date.where, lines: {} }] as const),
        ]),
        steps: review.steps.map(({ after }) => {
            const step = after === undefined ? undefined : recipe.steps[after];
            return step === undefined ? undefined : placesOf(step, recipe);
        }),
        art: Object.fromEntries(recipe.arts.map(({ name, where }) => [name, where])),
        ...found,
    };
}

/** A line's value may be stock, which was written elsewhere: that line is found by its block. */
function placesOf(block: { readonly where: Where }, { whole, base }: Recipe): BlockPlaces {
    const blocks = [whole, ...(base?.wholes ?? [])];
    const inside = ({ uri, offset }: Where): boolean =>
        blocks.some((one) => one.uri === uri && one.offset <= offset && offset < one.offset + one.length);
    return {
        at: block.where,
        lines: Object.fromEntries(Object.entries(writtenPlaces(block)).filter(([, where]) => inside(where))),
    };
}
