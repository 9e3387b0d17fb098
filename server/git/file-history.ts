import { Renames } from './renames';
import type { FileCommit, Repository } from './repository';

/** A file as a commit left it, under the name that it had then. */
export interface FileVersion extends FileCommit {
    readonly file: string;
}

/** More changes of one file's name than these are not followed. */
const mostNames = 20;

/**
 * The latest commits up to here that changed a file, newest first, those before a change of its name too.
 * Each line of work is followed by itself: a branch may have changed the file under the name that another gave up.
 */
export async function historyOf(repository: Repository, now: string, most: number): Promise<FileVersion[]> {
    const found = new Map<string, FileVersion>();
    const names: Beginning[] = [{ from: 'HEAD', file: await nameAtHead(repository, now) }];
    // What is found on the way is followed in its turn.
    for (const { from, file } of names) {
        const commits = await repository.commitsOf(file, most, from);
        for (const commit of commits) found.set(`${commit.id} ${file}`, { ...commit, file });
        for (const earlier of await beginnings(repository, file, commits)) {
            const known = names.some((each) => each.from === earlier.from && each.file === earlier.file);
            if (!known && names.length < mostNames) names.push(earlier);
        }
    }
    return [...found.values()].toSorted((a, b) => b.time - a.time).slice(0, most);
}

/** A name of a file, and the commit from which back it had that name. */
interface Beginning {
    readonly from: string;
    readonly file: string;
}

/** A file that was renamed and not yet committed still has its old name there. */
async function nameAtHead(repository: Repository, now: string): Promise<string> {
    const head = await repository.commit('HEAD').catch(() => undefined);
    if (head === undefined || (await repository.has(head, now))) return now;
    return new Renames(await repository.changes(head)).pair(now).before;
}

/** What a file was called in the commits from which it came to its name. */
async function beginnings(repository: Repository, file: string, commits: readonly FileCommit[]): Promise<Beginning[]> {
    const found: Beginning[] = [];
    for (const commit of commits) {
        // A merge adds nothing by itself, yet one of its parents may know the file by its old name only.
        if (!commit.adds && commit.parents.length < 2) continue;
        for (const parent of commit.parents) {
            const then = { id: parent, name: parent };
            if (await repository.has(then, file)) continue;
            const { before } = new Renames(await repository.changes(then, { id: commit.id, name: commit.id })).pair(file);
            if (before !== file) found.push({ from: parent, file: before });
        }
    }
    return found;
}
