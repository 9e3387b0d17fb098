import type { HistoryJob } from '../engine/jobs';
import type { PlacedRecipe } from './table-jobs';
import type { Versions } from './versions';

/** The runs of a recipe, each with the revision that it followed where there are earlier versions to find it in. */
export async function historyJob<What extends HistoryJob['do']>(
    what: What,
    versions: Versions | undefined,
    { document, recipe }: PlacedRecipe,
    last: number,
    tell?: (part: number) => void,
): Promise<HistoryJob & { readonly do: What }> {
    const wanted = new Set(
        recipe.runs.flatMap(({ revision }) => (revision === undefined || revision === recipe.revision ? [] : [revision])),
    );
    const found = wanted.size === 0 ? undefined : await versions?.past(document.uri.toString(), recipe.name, wanted, tell);
    return {
        do: what,
        recipe,
        past: recipe.runs.map(({ revision }) => (revision === undefined ? undefined : found?.get(revision))),
        last,
    };
}
