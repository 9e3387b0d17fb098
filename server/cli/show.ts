import path from 'node:path';
import type { LangiumDocument } from 'langium';
import { isFile, isRecipe } from '../../language/generated/ast';
import { Repository } from '../git/repository';
import type { Workshop } from '../workshop/workshop';
import { say } from './say';
import { readArgs } from './usage/read-args';
import { showUsage } from './usage/usages';
import { UsageError } from './usage-error';
import { openFile } from './version-source';

/**
 * `kerfbook show`: a recipe file as plain lines, one fact each, for tools that compare lines. Recipes
 * are told with what follows from them for fit and depth, with `--all` also for settings, amounts, times and money; stock
 * stands as it is written.
 */
export async function show(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(showUsage, args);
    const [name] = positionals;
    if (name === undefined || positionals.length > 1) throw new UsageError('Say which file (*.kerf) to show.');
    const { workshop, documents } = await openFile(name, values.as ?? (await originOf(name)));
    const document = documents.get(name);
    say(document === undefined ? '' : await shown(workshop, document, values.all));
    return 0;
}

/** The folders in which git lays copies for its helpers. */
const copies = /^git-blob-\w+$/;

/**
 * Git hands its text filters a copy in a temporary folder and does not say whose. Where the
 * repository has one file of that name, it is the copy of that.
 */
async function originOf(name: string): Promise<string> {
    if (!copies.test(path.basename(path.dirname(path.resolve(name))))) return name;
    const repository = await Repository.of(process.cwd()).catch(() => undefined);
    const files = (await repository?.tree())?.files ?? [];
    const alike = new Set(files.filter((file) => path.posix.basename(file) === path.basename(name)));
    const [only] = alike;
    return only === undefined || alike.size > 1 ? name : path.join(repository!.top, ...only.split('/'));
}

async function shown(workshop: Workshop, document: LangiumDocument, all: boolean): Promise<string> {
    const text = document.textDocument.getText();
    const file = document.parseResult.value;
    const broken = workshop.textFindings(document).find(({ rule }) => rule === 'syntax');
    // What cannot be read as a whole is shown as it is: a summary of half a recipe would hide the other half.
    if (!isFile(file) || broken !== undefined) return `cannot be read as a recipe: ${broken?.message ?? ''}\n\n${text}`;
    const recipes = new Map(workshop.recipes(document).map((recipe) => [recipe.whole.offset, recipe]));
    const parts = await Promise.all(
        [...file.uses, ...file.entries].map(async (entry) => {
            const recipe = isRecipe(entry) ? recipes.get(entry.$cstNode?.offset ?? -1) : undefined;
            return recipe === undefined ? `${entry.$cstNode?.text ?? ''}\n` : workshop.ask({ do: 'summary', recipe, all });
        }),
    );
    return `${parts.join('\n')}\n`;
}
