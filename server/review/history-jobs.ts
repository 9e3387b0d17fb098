import type { LangiumDocument } from 'langium';
import type { HistoryJob } from '../engine/jobs';
import type { PlacedRecipe } from './table-jobs';
import type { Versions } from './versions';

/** Whether a file tells of a recipe's runs: its own file does, where it has any, and so does one in which a run of it stands. */
export function isToldBy(file: LangiumDocument, { document, recipe }: PlacedRecipe): boolean {
    if (file === document) return recipe.runs.length > 0;
    return recipe.runs.some(({ whole }) => whole.uri === file.uri.toString());
}

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
