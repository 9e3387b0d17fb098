import type { Recipe } from '../../shared/recipe/recipe';
import { familiesOf, familyOf } from '../../shared/review/families';
import { tableHtml } from '../../shared/review/html/table';
import { plainJson } from '../../shared/review/one-line';
import { tableCsv, tableMarkdown, tableText } from '../../shared/review/table-text';
import type { VariantTable } from '../../shared/review/variant-table';
import { allRecipes, tableJob } from '../review/table-jobs';
import { openFiles } from './open-files';
import { say } from './say';
import type { ChoiceOf } from './usage/command-usage';
import { readArgs } from './usage/read-args';
import { tableUsage } from './usage/usages';
import { UsageError } from './usage-error';

const formats: Readonly<Record<ChoiceOf<typeof tableUsage, 'format'>, (table: VariantTable) => string>> = {
    text: tableText,
    markdown: tableMarkdown,
    csv: tableCsv,
    json: (table) => `${plainJson(table)}\n`,
    html: tableHtml,
};

/** `kerfbook table`: the variants of a recipe side by side, or any recipes that are named. */
export async function table(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(tableUsage, args);
    const format = formats[values.format];
    if (values.base !== undefined && values.recipes !== undefined) throw new UsageError('Say --base or --recipes, not both.');
    const { workshop, documents } = await openFiles(positionals);
    const known = allRecipes(workshop);
    const recipes = known.map(({ recipe }) => recipe);
    const named = new Set(known.filter(({ document }) => documents.includes(document)).map(({ recipe }) => recipe));
    const chosen =
        values.recipes !== undefined
            ? chosenOf(values.recipes, recipes)
            : values.base !== undefined
              ? familyFrom(values.base, recipes)
              : onlyFamily(familiesOf(recipes).filter((family) => family.some((recipe) => named.has(recipe))));
    say(format(await workshop.ask(tableJob('table', workshop, chosen, known, values.all))));
    return 0;
}

function chosenOf(list: string, recipes: readonly Recipe[]): Recipe[] {
    const names = list.split(',').map((name) => name.trim());
    if (names.length < 2) throw new UsageError('Name at least two recipes: --recipes a,b.');
    return names.map((name) => recipes.find((recipe) => recipe.name === name) ?? missing(name));
}

function familyFrom(base: string, recipes: readonly Recipe[]): Recipe[] {
    const family = familyOf(base, recipes);
    if (family.length === 0) missing(base);
    if (family.length === 1) throw new UsageError(`Nothing in these files is based on ${base}.`);
    return family;
}

function onlyFamily(families: readonly Recipe[][]): Recipe[] {
    const [family, ...others] = families;
    if (family === undefined) throw new UsageError('No recipe in these files is based on another: name some with --recipes a,b.');
    if (others.length === 0) return family;
    throw new UsageError(`Say which with --base: ${families.map(([base]) => base!.name).join(', ')}.`);
}

function missing(name: string): never {
    throw new UsageError(`There is no recipe ${name}.`);
}
