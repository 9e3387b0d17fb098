import { realpath } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { LangiumDocument } from 'langium';
import { changesThrough } from '../git/changes-through';
import { realPlace } from '../git/real-place';
import { type ChangedFile, type Commit, Repository } from '../git/repository';
import type { Workshop } from '../workshop/workshop';
import { complain } from './say';
import { UsageError } from './usage-error';

export async function repositoryHere(folder = process.cwd()): Promise<Repository> {
    const repository = await Repository.of(folder);
    if (repository === undefined) throw new UsageError(`${folder} is not in a git repository with a work tree.`);
    return repository;
}

/** What differs, in submodules too; what cannot be told of them is said where it does not get into a report. */
export async function changesIn(repository: Repository, from: Commit, to?: Commit): Promise<readonly ChangedFile[]> {
    const { changes, unread } = await changesThrough(repository, from, to);
    for (const name of unread) {
        complain(`What changed in the submodule ${name} is left out: it is not checked out here, or lacks the commit.`);
    }
    return changes;
}

/**
 * The documents that a change reaches: their own text, a file they use, or their art is new, changed, renamed or gone.
 */
export async function touchedBy(
    changes: readonly ChangedFile[],
    repository: Repository,
    workshop: Workshop,
    documents: readonly LangiumDocument[],
): Promise<LangiumDocument[]> {
    const changed = new Set(
        changes
            .flatMap(({ before, after }) => [before, after])
            .flatMap((file) => (file === undefined ? [] : [path.join(repository.top, ...file.split('/'))])),
    );
    // Which art a recipe draws takes working it out: where nothing but recipes has changed, nobody needs to know.
    const withArt = [...changed].some((file) => !file.endsWith('.kerf'));
    const touched: LangiumDocument[] = [];
    for (const document of documents) {
        const places = await Promise.all(reads(workshop, document, withArt).map(placesOf));
        if (places.flat().some((place) => changed.has(place))) touched.push(document);
    }
    return touched;
}

/** The addresses of all files that a document's findings rest on, those that are missing too. */
function reads(workshop: Workshop, document: LangiumDocument, withArt: boolean): string[] {
    const used = workshop.services.names.UsedFiles.of(document).map(({ uri }) => uri.toString());
    const recipes = withArt ? workshop.recipes(document) : [];
    const arts = recipes.flatMap((recipe) => recipe.arts.map((art) => art.uri));
    return [...new Set([document.uri.toString(), ...used, ...arts])];
}

/** Where a file lies and, should it be a link, where that leads. */
async function placesOf(uri: string): Promise<string[]> {
    let file: string;
    try {
        file = fileURLToPath(uri);
    } catch {
        return [];
    }
    const target = await realpath(file).catch(() => undefined);
    return [await realPlace(file), ...(target === undefined ? [] : [target])];
}
