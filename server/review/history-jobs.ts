import type { LangiumDocument } from 'langium';
import type { Recipe } from '../../shared/recipe/recipe';
import type { Run } from '../../shared/recipe/run';
import type { HistoryJob } from '../engine/jobs';
import type { PlacedRecipe } from './table-jobs';
import type { Versions, WantedPast } from './versions';

/** Whether a file tells of a recipe's runs: its own file does, where it has any, and so does one in which a run of it stands. */
export function isToldBy(file: LangiumDocument, { document, recipe }: PlacedRecipe): boolean {
    if (file === document) return recipe.runs.length > 0;
    return recipe.runs.some(({ whole }) => whole.uri === file.uri.toString());
}

/** The runs of a recipe, each with the recipe as it was on its day, where there are earlier versions to find it in. */
export async function historyJob<What extends HistoryJob['do']>(
    what: What,
    versions: Versions | undefined,
    { document, recipe }: PlacedRecipe,
    last: number,
    tell?: (part: number) => void,
): Promise<HistoryJob & { readonly do: What }> {
    const wanted = recipe.runs.map((run, at) => wantedOf(run, recipe, at >= recipe.runs.length - last));
    const isAny = wanted.some(({ revision, day }) => revision !== undefined || day !== undefined);
    const found = isAny ? await versions?.past(document.uri.toString(), recipe.name, wanted, tell) : undefined;
    return { do: what, recipe, past: recipe.runs.map((_, at) => found?.[at]), last };
}

/** What is told one by one is held against the plan of its day; of the others their revision is enough, and that of today is here. */
function wantedOf({ revision, date }: Run, recipe: Recipe, isTold: boolean): WantedPast {
    const isNow = revision === recipe.revision;
    if (isTold) return { ...(revision !== undefined && { revision }), day: date.value, orNewest: !isNow };
    return revision === undefined || isNow ? {} : { revision };
}
