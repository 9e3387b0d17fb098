import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { type LangiumDocument, URI } from 'langium';
import { phrase } from '../../shared/recipe/phrase';
import type { Recipe } from '../../shared/recipe/recipe';
import { folderKey } from '../../shared/sheets/made-folder';
import { buildJob } from '../writing/build-files';
import { CannotWrite } from '../writing/cannot-write';
import { type MadePlace, placeOfRecipe } from '../writing/made-of';
import { allFindings, shortPath } from './all-findings';
import { plural } from './formats/check-report';
import { openFiles } from './open-files';
import { complain } from './say';
import { startOf } from './start-of';
import { readArgs } from './usage/read-args';
import { buildUsage } from './usage/usages';
import { UsageError } from './usage-error';
import { tellLeftBehind, writeHere } from './write-here';

interface Wanted {
    readonly document: LangiumDocument;
    readonly recipe: Recipe;
    readonly place: MadePlace;
}

/** `kerfbook build`: the files for machine and bench, into `made/<recipe>` beside each recipe or below --out. 1 if anything of it is not written. */
export async function build(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(buildUsage, args);
    const { start } = startOf(values.start);
    const wish = { force: values.force, clean: values.clean, dryRun: values['dry-run'] };
    const { workshop, documents, files } = await openFiles(positionals);
    const out = values.out === undefined ? undefined : URI.parse(pathToFileURL(path.resolve(values.out)).toString());
    const reach = { files, out: values.out };
    const wanted = documents.flatMap((document) =>
        workshop
            .recipes(document)
            .filter((recipe) => values.recipe === undefined || recipe.name === values.recipe)
            .map((recipe): Wanted => ({ document, recipe, place: placeOfRecipe(document, recipe.name, out) })),
    );
    if (wanted.length === 0) throw new UsageError('There is no recipe to build.');
    refuseShared(wanted);
    let problems = 0;
    const held = new Set<LangiumDocument>();
    for (const document of new Set(wanted.map((each) => each.document))) {
        const errors = (await allFindings(workshop, document)).filter(({ finding }) => finding.severity === 'error');
        if (errors.length === 0 || values.force) continue;
        const first = errors[0]!;
        complain(
            `${shortPath(document)}: ${plural(errors.length, 'error')} open, nothing written (--force writes all the same). First: ${first.file}:${first.line}: ${first.finding.message}`,
        );
        held.add(document);
    }
    for (const { document, recipe, place } of wanted) {
        if (held.has(document)) continue;
        const sheets = await workshop.ask(buildJob(workshop, document, recipe, start));
        problems += sheets.problems.length;
        for (const problem of sheets.problems) complain(problem);
        await writeHere(place, sheets.files, reach, wish);
    }
    if (values.recipe === undefined) {
        const known = wanted.map(({ place }) => place);
        for (const document of documents) await tellLeftBehind(document, known, reach, wish, out);
    }
    return held.size + problems > 0 ? 1 : 0;
}

/** @throws CannotWrite before anything is written where two recipes would lie in one folder */
function refuseShared(wanted: readonly Wanted[]): void {
    const by = new Map<string, Wanted>();
    for (const each of wanted) {
        const key = folderKey(each.place.folder.path);
        const other = by.get(key);
        const named = ({ recipe, document }: Wanted): string => `${recipe.name} in ${shortPath(document)}`;
        if (other !== undefined) {
            throw new CannotWrite(
                phrase`Nothing was written: ${named(other)} and ${named(each)} would share a folder. Rename one of them, or build them apart with --out.`,
            );
        }
        by.set(key, each);
    }
}
