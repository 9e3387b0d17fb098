import type { LangiumDocument } from 'langium';
import { isBuiltIn } from '../../language/built-in';
import type { Recipe } from '../../shared/recipe/recipe';
import type { TableJob } from '../engine/jobs';
import type { Workshop } from '../workshop/workshop';
import { findingsOf } from './review-files';

/** A recipe and the file it stands in. */
export interface PlacedRecipe {
    readonly document: LangiumDocument;
    readonly recipe: Recipe;
}

/** Every recipe of the shop's own files that are open, file by file; files are read in no order of their own. */
export function allRecipes(workshop: Workshop): PlacedRecipe[] {
    const documents = workshop.services.shared.workspace.LangiumDocuments.all.toArray();
    return documents
        .toSorted((a, b) => (a.uri.toString() < b.uri.toString() ? -1 : 1))
        .filter(({ uri }) => !isBuiltIn(uri.toString()))
        .flatMap((document) => workshop.recipes(document).map((recipe) => ({ document, recipe })));
}

/** Recipes side by side, in the order in which they are given. */
export function tableJob<What extends TableJob['do']>(
    what: What,
    workshop: Workshop,
    recipes: readonly Recipe[],
    known: readonly PlacedRecipe[],
    all: boolean,
): TableJob & { readonly do: What } {
    const columns = recipes.map((recipe) => {
        const document = known.find((each) => each.recipe === recipe)?.document;
        return { recipe, textFindings: document === undefined ? [] : findingsOf(workshop, document, recipe) };
    });
    return { do: what, columns, all };
}
