import type { ChangedFile, Commit, Repository } from './repository';
import { filesThrough, inSubmodule } from './submodules';

/** What differs between two versions, and the submodules of which it cannot be told, since they or their commits are not here. */
export interface ChangesThrough {
    readonly changes: readonly ChangedFile[];
    readonly unread: readonly string[];
}

/** What differs between a commit and another, or the work tree, of a repository and its submodules. */
export async function changesThrough(repository: Repository, from: Commit, to?: Commit): Promise<ChangesThrough> {
    const [own, { submodules: before }, { submodules: after }] = await Promise.all([
        repository.changes(from, to),
        repository.tree(from),
        repository.tree(to),
    ]);
    const changes = [...own];
    const unread: string[] = [];
    for (const at of new Set([...before.keys(), ...after.keys()])) {
        const [was, is] = [before.get(at), after.get(at)];
        if (was === is && to !== undefined) continue;
        const found = await inSubmodule(repository, at, (inside) =>
            differing(inside, commitAt(from, was), to && commitAt(to, is), is !== undefined),
        );
        if (found === undefined && was !== is) unread.push(at);
        unread.push(...(found?.unread ?? []).map((name) => `${at}/${name}`));
        for (const { before: old, after: now } of found?.changes ?? []) {
            changes.push({
                ...(old !== undefined && { before: `${at}/${old}` }),
                ...(now !== undefined && { after: `${at}/${now}` }),
            });
        }
    }
    return { changes, unread };
}

function commitAt(outer: Commit, id: string | undefined): Commit | undefined {
    return id === undefined ? undefined : { ...outer, id };
}

/** `to` absent while it is there: its work tree. */
async function differing(
    inside: Repository,
    from: Commit | undefined,
    to: Commit | undefined,
    isThere: boolean,
): Promise<ChangesThrough> {
    const all = async (commit?: Commit): Promise<readonly string[]> => filesThrough(inside, commit);
    if (from === undefined) return { changes: (await all(to)).map((after) => ({ after })), unread: [] };
    if (!isThere) return { changes: (await all(from)).map((before) => ({ before })), unread: [] };
    return changesThrough(inside, from, to);
}
