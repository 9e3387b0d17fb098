import { phrase } from '../../shared/recipe/phrase';
import type { Asker } from '../engine/asker';
import { type OpenVersion, openVersion } from '../review/open-version';
import { CannotOpen } from '../workshop/cannot-open';
import type { Commit, Repository } from './repository';
import { RevisionFiles } from './revision-files';
import { filesThrough } from './submodules';

/**
 * Files of a repository as they were in a commit. Names are the repository's.
 *
 * @param names may be still on their way
 * @param reaches whether the file at an address may be read; absent: every file of the repository
 * @throws CannotOpen for a file that the clone knows by name only
 */
export async function openRevision(
    repository: Repository,
    commit: Commit,
    names: readonly string[] | Promise<readonly string[]>,
    asker: Asker,
    reaches?: (uri: string) => Promise<boolean>,
): Promise<OpenVersion> {
    const files = new RevisionFiles(repository, commit, reaches);
    const source = { fileSystem: files.fileSystem(), read: files.read };
    const there = async (): Promise<string[]> => {
        const known = new Set(await filesThrough(repository, commit));
        return (await names).filter((name) => known.has(name));
    };
    return openVersion(
        source,
        there(),
        (name) => files.uriOf(name),
        (name) => `${name} at ${commit.name}`,
        asker,
    ).catch((error: unknown) => {
        // A clone may know a file by name and never have fetched it.
        throw error instanceof CannotOpen
            ? new CannotOpen(phrase`${error.message} Is ${commit.name} in this clone as a whole?`)
            : error;
    });
}
