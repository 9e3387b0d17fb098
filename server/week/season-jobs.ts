import type { LangiumDocument } from 'langium';
import type { SeasonJob } from '../engine/jobs';
import { allRecipes } from '../review/table-jobs';
import type { Workshop } from '../workshop/workshop';

/**
 * The runs that these files tell of: of their recipes, or written in them. Each with its recipe for as many pieces as were begun.
 *
 * @param from the first day, ISO 8601
 * @param to the last day
 */
export async function seasonJob<What extends SeasonJob['do']>(
    what: What,
    workshop: Workshop,
    documents: readonly LangiumDocument[],
    from = '',
    to = '9',
): Promise<SeasonJob & { readonly do: What }> {
    const uris = new Set(documents.map(({ uri }) => uri.toString()));
    const runs = allRecipes(workshop).flatMap(({ document, recipe }) =>
        recipe.runs
            .filter(({ whole }) => documents.includes(document) || uris.has(whole.uri))
            .filter(({ date }) => date.value >= from && date.value <= to)
            .map(async ({ date, made, spoiled, took, by }) => {
                const make = (made ?? 0) + (spoiled ?? 0);
                return {
                    recipe: recipe.name,
                    title: recipe.title,
                    ...(make > 0 ? { plan: await workshop.ask({ do: 'booked', recipe: { ...recipe, make } }) } : {}),
                    date: date.value,
                    ...(made === undefined && spoiled === undefined ? {} : { made: made ?? 0, spoiled: spoiled ?? 0 }),
                    ...(took === undefined ? {} : { took: took.value }),
                    ...(by === undefined ? {} : { by }),
                };
            }),
    );
    return { do: what, runs: await Promise.all(runs) };
}
