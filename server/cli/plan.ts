import { plainJson } from '../../shared/review/one-line';
import { openFiles } from './open-files';
import { say } from './say';
import { startOf } from './start-of';
import { readArgs } from './usage/read-args';
import { planUsage } from './usage/usages';
import { UsageError } from './usage-error';

/** `kerfbook plan`: everything that was worked out, as JSON; a list when there is more than one recipe. */
export async function plan(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(planUsage, args);
    const start = startOf(values.start);
    const { workshop, documents } = await openFiles(positionals, values.as);
    const plans: unknown[] = [];
    for (const document of documents) {
        const textFindings = workshop.textFindings(document);
        for (const recipe of workshop.recipes(document)) {
            if (values.recipe !== undefined && recipe.name !== values.recipe) continue;
            plans.push(await workshop.ask({ do: 'json', recipe, textFindings, shapes: values.shapes, ...start }));
        }
    }
    if (plans.length === 0)
        throw new UsageError(
            values.recipe === undefined ? 'There is no recipe in these files.' : `There is no recipe ${values.recipe}.`,
        );
    say(`${plainJson(plans.length === 1 ? plans[0] : plans)}\n`);
    return 0;
}
