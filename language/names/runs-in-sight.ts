import { type AstNode, DocumentState, type LangiumDocument, type LangiumDocuments, type URI, UriUtils } from 'langium';
import { KeptOn } from '../../shared/plan/kept';
import { compareText } from '../../shared/quantity/compare-text';
import { isBuiltIn } from '../built-in';
import { isNewer } from '../edition';
import { type File, isFile, isRecipe, isRun, type Recipe, type Run } from '../generated/ast';
import type { KerfServices } from '../services';

interface Held {
    readonly runs: readonly Run[];
    readonly recipes: readonly Recipe[];
}

const held = new KeptOn<AstNode, Held>();
const nothing: Held = { runs: [], recipes: [] };

/** The runs and recipes of a file; kept as long as its tree. */
export function runsAndRecipesOf(document: LangiumDocument): Held {
    const file: File | AstNode = document.parseResult.value;
    if (!isFile(file)) return nothing;
    let known = held.get(file);
    if (known === undefined) {
        known = { runs: file.entries.filter(isRun), recipes: file.entries.filter(isRecipe) };
        held.set(file, known);
    }
    return known;
}

/**
 * Every run of a recipe that counts, wherever it stands: in the recipe's own file, in one that this uses, or in any file in its
 * folder and below. This is the one answer for the fit, the history and what is said of a run. In the order of their days.
 * Needs linked documents.
 */
export function runsOf(recipe: Recipe, document: LangiumDocument, services: KerfServices): Run[] {
    const runs: Run[] = [];
    for (const file of filesWithRuns(document, services))
        for (const run of runsAndRecipesOf(file).runs) if (run.recipe?.ref === recipe) runs.push(run);
    return runs.toSorted((a, b) => compareText(a.date ?? '', b.date ?? ''));
}

/** Whether the runs of a file count for recipes of another: those outside of that one's folder do not, unless it uses their file. */
export function isSeen(file: LangiumDocument, home: LangiumDocument, services: KerfServices): boolean {
    if (file === home || isInFolderOf(file.uri, home.uri)) return true;
    return services.names.UsedFiles.of(home).some(({ document }) => document === file);
}

function filesWithRuns(home: LangiumDocument, services: KerfServices): LangiumDocument[] {
    const near = [home, ...services.names.UsedFiles.of(home).flatMap(({ document }) => document ?? [])];
    const others = services.shared.workspace.LangiumDocuments.all
        .filter(
            (each) =>
                isInFolderOf(each.uri, home.uri) &&
                !near.includes(each) &&
                each.state >= DocumentState.ComputedScopes &&
                !isNewer(each) &&
                runsAndRecipesOf(each).runs.length > 0,
        )
        .toArray();
    return [...near, ...others.sort((a, b) => compareText(a.uri.path, b.uri.path))];
}

/** Whether a file lies beside another or in a folder below it. */
export function isInFolderOf(file: URI, home: URI): boolean {
    return file.scheme === home.scheme && file.path.startsWith(folderOf(home));
}

function folderOf(uri: URI): string {
    const folder = UriUtils.dirname(uri).path;
    return folder.endsWith('/') ? folder : `${folder}/`;
}

/** The files of which the recipes can be meant by a run of a file without a `use`: those beside it, then those of each folder above. */
export function filesAround(file: URI, documents: LangiumDocuments): LangiumDocument[] {
    return documents.all
        .filter(
            (each) =>
                !isBuiltIn(each.uri.toString()) &&
                each.uri.toString() !== file.toString() &&
                isInFolderOf(file, each.uri) &&
                each.state >= DocumentState.Parsed,
        )
        .toArray()
        .sort((a, b) => folderOf(b.uri).length - folderOf(a.uri).length || compareText(a.uri.path, b.uri.path));
}
