import path from 'node:path';
import { KeptOn } from '../../shared/plan/kept';
import type { ReadResult } from '../files/read-result';
import { realPlace } from './real-place';
import { type Commit, Repository } from './repository';
import { GitError } from './run-git';

// A repository with those that lie in it as submodules (gitsubmodules(7)): all files by their names from the
// outermost one. Of a submodule that commit counts which the repository around it names, beside a work tree its own.

/** Every file of a commit, or of the index; of submodules those that are here. */
export async function filesThrough(repository: Repository, commit?: Commit): Promise<string[]> {
    const { files: own, submodules } = await repository.tree(commit);
    const files = [...own];
    for (const [at, id] of submodules) {
        const inner = await inSubmodule(repository, at, (inside) => filesThrough(inside, commit && { ...commit, id }));
        for (const name of inner ?? []) files.push(`${at}/${name}`);
    }
    return files;
}

/** A file as it was in a commit, or in that commit of a submodule which the commit names. */
export async function readThrough(repository: Repository, commit: Commit, file: string, most: number): Promise<ReadResult> {
    const found = await repository.read(commit, file, most);
    if (!('problem' in found) || found.problem !== 'missing') return found;
    const above = await repository.submoduleAbove(commit, file);
    if (above === undefined) return found;
    const { at, id } = above;
    const inner = await inSubmodule(repository, at, (inside) =>
        readThrough(inside, { ...commit, id }, file.slice(at.length + 1), most),
    );
    return inner ?? found;
}

/** Undefined for a submodule that is not here, or not with the commits that are asked for. */
export async function inSubmodule<T>(
    repository: Repository,
    at: string,
    work: (inside: Repository) => Promise<T>,
): Promise<T | undefined> {
    try {
        const inside = await submoduleAt(repository, at);
        return inside && (await work(inside));
    } catch (error) {
        if (error instanceof GitError) return undefined;
        throw error;
    }
}

/** The submodules of each repository that are here, by where they lie: git is asked for each once, and each keeps one reader of its objects. */
const opened = new KeptOn<Repository, Map<string, Promise<Repository | undefined>>>();

function submoduleAt(repository: Repository, at: string): Promise<Repository | undefined> {
    const known = opened.getOr(repository, () => new Map());
    const found = known.get(at) ?? openSubmodule(path.join(repository.top, ...at.split('/')));
    known.set(at, found);
    return found;
}

async function openSubmodule(folder: string): Promise<Repository | undefined> {
    // A link or a setting that leads elsewhere is not followed.
    if ((await realPlace(path.join(folder, '.git'))) !== path.join(folder, '.git')) return undefined;
    const inside = await Repository.of(folder);
    // Where nothing is checked out, git finds the repository around it; where no folder is, it cannot start.
    return inside?.top === folder ? inside : undefined;
}
