import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { choicesOf } from '../../language/starting/shop-here';
import type { NewRecipeChoices, NewRecipeParams, Picked } from '../../shared/view/new-recipe';
import type { Technique } from '../../shared/view/techniques';
import { LocalAsker } from '../engine/asker';
import { realFolder } from '../files/real-folder';
import { newRecipe } from '../starting/new-recipe';
import { pick, pickFill } from '../starting/picked';
import { openWorkshop } from '../workshop/open-workshop';
import { DiskStore } from '../writing/disk-store';
import { writeNew } from '../writing/write-new';
import { copySamples } from './copy-samples';
import { diskSource } from './open-files';
import { recipeFilesIn } from './recipe-files';
import { complain, sayLine } from './say';
import { readArgs } from './usage/read-args';
import { newUsage } from './usage/usages';
import { UsageError } from './usage-error';

/** `kerfbook new`: a recipe to begin with, in this folder or below --in. Nothing that is there is written over. */
export async function newCommand(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(newUsage, args);
    const title = positionals.join(' ').trim();
    if (values.samples) {
        if (title !== '') throw new UsageError('--samples has names of its own. Say with --in where they are to lie.');
        await copySamples(path.resolve(values.in), __dirname);
        return 0;
    }
    if (title === '') throw new UsageError('Say what the recipe is to be called.');
    const { technique } = values;
    if (technique === undefined) throw new UsageError(`Say --technique: ${newUsage.options.technique.choices.join(', ')}.`);
    const folder = path.resolve(values.in);
    const files = (await recipeFilesIn(process.cwd())).map((file) => pathToFileURL(file).toString());
    const source = await diskSource([process.cwd()]);
    const asker = new LocalAsker();
    const { workshop } = await openWorkshop(source, files, undefined, asker);
    const documents = workshop.services.shared.workspace.LangiumDocuments.all.toArray();
    const choices = choicesOf(documents);
    const params = {
        folder: pathToFileURL(folder).toString(),
        files,
        title,
        technique,
        board: pickOption('board', values.board, choices.boards),
        ...(values.veneer === undefined ? {} : { veneer: pickOption('veneer', values.veneer, choices.veneers) }),
        laser: pickOption('laser', values.laser, choices.lasers),
        ...(values.colour === undefined ? {} : fillOf(values.colour, technique, choices)),
        ...(values.art === undefined ? {} : { art: pathToFileURL(path.resolve(values.art)).toString() }),
        ...(values.size === undefined ? {} : { size: sizeOf(values.size) }),
    };
    const answer = await newRecipe(params, { workshop, documents, source, asker });
    if ('problem' in answer) throw new UsageError(answer.problem);
    // The folder that was named may be written to, wherever it lies.
    const roots = await Promise.all([process.cwd(), folder].map(realFolder));
    await writeNew(new DiskStore(folder, roots), answer.files);
    for (const file of answer.files) sayLine(path.relative('.', path.join(folder, ...file.path.split('/'))));
    for (const finding of answer.findings) complain(finding);
    return 0;
}

function pickOption(
    what: keyof NewRecipeChoices extends `${infer S}s` ? S : never,
    name: string | undefined,
    all: readonly Picked[],
): Picked {
    const choice = pick(name, all);
    if ('chosen' in choice) return choice.chosen;
    const { names } = choice;
    throw new UsageError(name === undefined ? `Say --${what}: ${names}.` : `There is no ${what} ${name}; there is ${names}.`);
}

function fillOf(text: string, technique: Technique, choices: NewRecipeChoices): Pick<NewRecipeParams, 'resin' | 'colour'> {
    if (technique !== 'filled') throw new UsageError('--colour is for --technique filled: nothing else is filled.');
    const choice = pickFill(text, choices);
    if ('chosen' in choice) return choice.chosen;
    throw new UsageError(`There is no resin and no colour ${text}; there is ${choice.names}, or a colour such as #1d5f7a.`);
}

/** `120x80`, in mm. */
function sizeOf(text: string): { width: number; height: number } {
    const [width, height] = (/^(\d+(?:\.\d+)?)\s*x\s*(\d+(?:\.\d+)?)$/.exec(text) ?? []).slice(1).map(Number);
    if (!(width! > 0 && height! > 0 && width! < 10_000 && height! < 10_000))
        throw new UsageError('--size is two numbers of mm, such as 120x80.');
    return { width: width!, height: height! };
}
