import type { LangiumDocument } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import type { Recipe } from '../../shared/recipe/recipe';
import { emptyRecipe } from '../../shared/review/empty-recipe';
import type { ReviewAnswer, ReviewJob, VersionAsked } from '../engine/jobs';
import type { Workshop } from '../workshop/workshop';
import type { OpenVersion } from './open-version';

/** A recipe file in two versions, by its name in each. */
export interface FilePair {
    readonly before: string;
    readonly after: string;
}

export interface ReviewWish {
    /** Only the recipe of this name. */
    readonly recipe?: string;
    readonly pictures: boolean;
    /** @see ReviewJob */
    readonly brief?: boolean;
}

/** Reviews every recipe of a file. */
export async function reviewFile(
    before: OpenVersion,
    after: OpenVersion,
    pair: FilePair,
    wish: ReviewWish,
): Promise<ReviewAnswer[]> {
    const answers: ReviewAnswer[] = [];
    for (const job of await reviewJobs(before, after, pair, wish)) answers.push(await after.workshop.ask(job));
    return answers;
}

/** A review for every recipe of a file: those of one name, then the one that is left on either side as renamed. */
export async function reviewJobs(
    before: OpenVersion,
    after: OpenVersion,
    pair: FilePair,
    { recipe: only, pictures, brief = false }: ReviewWish,
): Promise<ReviewJob[]> {
    const both = pairs(recipesOf(before, pair.before), recipesOf(after, pair.after));
    const wanted = both.filter(([was, is]) => only === undefined || only === is?.name || only === was?.name);
    return Promise.all(
        wanted.map(async ([was, is]): Promise<ReviewJob> => {
            const arts = was === undefined ? [] : await before.workshop.arts.of(was);
            return {
                do: 'review',
                ...asked(after, pair.after, is, was),
                before: { ...asked(before, pair.before, was, is), arts },
                pictures,
                brief,
            };
        }),
    );
}

function recipesOf({ workshop, documents }: OpenVersion, name: string): readonly Recipe[] {
    const document = documents.get(name);
    return document === undefined ? [] : workshop.recipes(document);
}

function pairs(before: readonly Recipe[], after: readonly Recipe[]): [Recipe | undefined, Recipe | undefined][] {
    const left = new Map(before.map((recipe) => [recipe.name, recipe]));
    const fresh = after.filter((recipe) => !left.has(recipe.name));
    const same = after.flatMap((recipe): [Recipe, Recipe][] => {
        const old = left.get(recipe.name);
        left.delete(recipe.name);
        return old === undefined ? [] : [[old, recipe]];
    });
    if (fresh.length === 1 && left.size === 1) return [...same, [[...left.values()][0], fresh[0]]];
    return [
        ...same,
        ...fresh.map((recipe): [undefined, Recipe] => [undefined, recipe]),
        ...[...left.values()].map((recipe): [Recipe, undefined] => [recipe, undefined]),
    ];
}

function asked(version: OpenVersion, name: string, recipe: Recipe | undefined, other: Recipe | undefined): VersionAsked {
    const document = version.documents.get(name);
    const label = version.label(name);
    const from = document !== undefined || label === 'nothing' ? label : `nothing (${label} is not there)`;
    if (document === undefined || recipe === undefined) {
        return { recipe: emptyRecipe(other?.name ?? ''), from, exists: false, textFindings: [] };
    }
    return { recipe, from, exists: true, textFindings: findingsOf(version.workshop, document, recipe) };
}

/** The text's findings of a recipe, and those that stand outside of every recipe. */
export function findingsOf(workshop: Workshop, document: LangiumDocument, recipe: Recipe): Finding[] {
    const others = workshop.recipes(document).filter(({ name }) => name !== recipe.name);
    return workshop
        .textFindings(document)
        .filter(({ where }) => where.uri === document.uri.toString() && !others.some((other) => holds(other, where.offset)));
}

function holds({ whole }: Recipe, offset: number): boolean {
    return whole.offset <= offset && offset < whole.offset + whole.length;
}
