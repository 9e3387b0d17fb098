import { createHash } from 'node:crypto';
import { lstat, readFile } from 'node:fs/promises';
import path from 'node:path';
import { phrase } from '../../shared/recipe/phrase';
import type { RevisionChoice } from '../../shared/view/protocol';
import type { ReadResult } from '../files/read-result';
import { insideOf } from './inside-of';
import { ObjectReader } from './object-reader';
import { type NamedText, pairMoved } from './pair-moved';
import { realPlace } from './real-place';
import { GitError, runGit } from './run-git';

/** A commit, by its object name. */
export interface Commit {
    readonly id: string;
    /** As the person named it. */
    readonly name: string;
}

/** What is staged, in the place of a commit: git names its files by a path behind a colon with nothing in front. */
export const staged: Commit = { id: '', name: 'the index' };

export interface NamedCommit {
    readonly id: string;
    /** ISO 8601, `2026-11-20`. */
    readonly day: string;
    readonly subject: string;
    /** When it was made, s since 1970. */
    readonly time: number;
    /** Object names of the commits before it: none of the first, several of a merge. */
    readonly parents: readonly string[];
}

/** A commit that changed a file. */
export interface FileCommit extends NamedCommit {
    /** Put it where there was none of its name; of a merge, which adds nothing by itself, never. */
    readonly adds: boolean;
}

/** A file that differs between two versions; paths are the repository's, with forward slashes. */
export interface ChangedFile {
    /** Absent where the file is new. */
    readonly before?: string;
    /** Absent where it is gone. */
    readonly after?: string;
}

/** Every file, and where submodules lie with the commits that they are named by. */
export interface Tree {
    readonly files: readonly string[];
    readonly submodules: ReadonlyMap<string, string>;
    /** Object names of plain files; links have none here. */
    readonly blobs: ReadonlyMap<string, string>;
}

/** A git repository as it is stored. The work tree and the index are never written. */
export class Repository {
    private readonly objects: ObjectReader;
    /** A commit never changes, so what it holds is asked once. */
    private readonly trees = new Map<string, Promise<Tree>>();
    /** What the index holds, while git is being asked for it. */
    private index: Promise<Tree> | undefined;

    private constructor(
        /** The top folder of the work tree, links followed. */
        readonly top: string,
    ) {
        this.objects = new ObjectReader(top);
    }

    /** The repository that holds a folder; undefined where there is none. */
    static async of(folder: string): Promise<Repository | undefined> {
        const { code, out, complaint } = await runGit({ folder, args: ['rev-parse', '--show-toplevel'] });
        if (code === 0) return new Repository(path.resolve(out.toString('utf8').replace(/\r?\n$/, '')));
        if (/not a git repository|must be run in a work tree/.test(complaint)) return undefined;
        throw new GitError(phrase`git: ${complaint}`);
    }

    /** Git's own folders: the one of this work tree, and the one that all work trees of the repository share. */
    async stores(): Promise<{ readonly own: string; readonly common: string }> {
        const { code, out, complaint } = await this.run('rev-parse', '--git-dir', '--git-common-dir');
        const [own, common] = out.toString('utf8').split(/\r?\n/);
        if (code !== 0 || !own || !common) throw new GitError(phrase`git: ${complaint}`);
        return { own: path.resolve(this.top, own), common: path.resolve(this.top, common) };
    }

    /** @throws GitError for what is no revision of this repository */
    async commit(name: string): Promise<Commit> {
        // What begins with a dash would be read as one of git's own words.
        if (!/^[^-\p{Cc}][^\p{Cc}]*$/u.test(name)) throw new GitError(phrase`${JSON.stringify(name)} is no revision.`);
        const { head } = await this.objects.read(`${name}^{commit}`, 0);
        const id = /^([0-9a-f]{40,64}) commit \d+$/.exec(head)?.[1];
        if (id !== undefined) return { id, name };
        const shallow = (await this.run('rev-parse', '--is-shallow-repository')).out.toString('utf8').trim() === 'true';
        const hint = shallow ? phrase` This clone is shallow: fetch more of its history.` : '';
        throw new GitError(phrase`There is no revision ${name} in this repository.${hint}`);
    }

    /** Whether a file is in a commit. */
    async has(commit: Commit, file: string): Promise<boolean> {
        if (isUnreadable(file)) return false;
        const { head } = await this.objects.read(`${commit.id}:${file}`, 0);
        return /^(?:[0-9a-f]{40,64} blob|symlink|dangling|loop) \d+$/.test(head);
    }

    /** The latest commits up to one that changed a file, newest first; those before a change of its name are left out. */
    async commitsOf(file: string, most: number, from = 'HEAD'): Promise<FileCommit[]> {
        const words = ['--no-show-signature', '-z', '--format=%H%x00%P%x00%cs%x00%ct%x00%s', '--name-status', '--no-renames'];
        const limit = Number.isFinite(most) ? [`--max-count=${most}`] : [];
        const { code, out } = await this.run('log', ...words, ...limit, from, '--', file);
        return code === 0 ? fileCommits(out.toString('utf8').split('\0'), file) : [];
    }

    /** A word for where HEAD and all branches and tags stand. */
    async standing(): Promise<string> {
        // It ends with 1 where there is nothing yet.
        const { out } = await this.run('show-ref', '--head');
        return createHash('sha256').update(out).digest('base64');
    }

    /** Branches and tags, those that were changed last first. */
    async names(): Promise<RevisionChoice[]> {
        const format = '--format=%(refname)%00%(refname:short)%00%(creatordate:short)%00%(subject)%00';
        const kinds = { heads: 'branch', remotes: 'branch', tags: 'tag' } as const;
        const { out } = await this.run(
            'for-each-ref',
            '--sort=-creatordate',
            '--count=300',
            format,
            'refs/heads',
            'refs/remotes',
            'refs/tags',
        );
        const fields = out.toString('utf8').split('\0');
        const found: RevisionChoice[] = [];
        for (let i = 0; i + 3 < fields.length; i += 4) {
            const [ref, name, day, subject] = fields.slice(i, i + 4) as [string, string, string, string];
            const kind = /^\n?refs\/(heads|remotes|tags)\//.exec(ref)?.[1] as keyof typeof kinds | undefined;
            if (kind === undefined || ref.endsWith('/HEAD')) continue;
            found.push({ revision: name, kind: kinds[kind], name, day, subject });
        }
        return found;
    }

    /** Where the work tree's branch left another one; the other itself where that cannot be told. */
    async forkPoint(commit: Commit): Promise<Commit> {
        const { code, out } = await this.run('merge-base', commit.id, 'HEAD');
        return code === 0 ? { id: out.toString('utf8').trim(), name: `the fork from ${commit.name}` } : commit;
    }

    /** A file as it was in a commit. Links inside the repository are followed, others are not. */
    async read(commit: Commit, file: string, most: number): Promise<ReadResult> {
        if (isUnreadable(file)) return { problem: 'unreadable', version: 'unreadable' };
        // By its own name git finds an object at once; by a path it reads every folder above, for each of thousands of files.
        const id = (await this.trees.get(commit.id)?.catch(() => undefined))?.blobs.get(file);
        // A link in the index is named like a file: its own words would be read.
        if (id === undefined && commit.id === staged.id) return { problem: 'missing', version: 'missing' };
        const { head, body } = await this.objects.read(id ?? `${commit.id}:${file}`, most);
        const blob = /^([0-9a-f]{40,64}) blob \d+$/.exec(head);
        if (blob === null) return { ...refusal(head), version: head };
        if (body === undefined) return { problem: 'too-large', version: blob[1]! };
        return { bytes: new Uint8Array(body), version: blob[1]! };
    }

    /** What differs between a commit and another, or the work tree with what git does not know yet. Renames as git sees them. */
    async changes(from: Commit, to?: Commit): Promise<ChangedFile[]> {
        const isStaged = to?.id === staged.id;
        const versions = to === undefined ? [from.id] : isStaged ? ['--cached', from.id] : [from.id, to.id];
        const words = ['--name-status', '-z', '-M', '--no-ext-diff', '--no-textconv', '--ignore-submodules=dirty'];
        const [others, settings] = await Promise.all([
            to === undefined ? this.run('ls-files', '-z', '--others', '--exclude-standard') : undefined,
            // Between two commits nothing of the work tree is looked at.
            to === undefined ? this.withoutFilters() : {},
        ]);
        const index = isStaged ? await this.indexInUse() : {};
        const diff = await runGit({ folder: this.top, args: ['diff', ...words, ...versions, '--'], settings, ...index });
        if (diff.code !== 0) throw new GitError(phrase`git: ${diff.complaint}`);
        const changed = nameStatus(diff.out.toString('utf8'));
        if (others === undefined) return changed;
        return this.withMoved(from, [...changed, ...names(others.out).map((after) => ({ after }))]);
    }

    /** A recipe that was moved and of which git has not been told is one file, not one that is gone and one that is new. */
    private async withMoved(from: Commit, changed: readonly ChangedFile[]): Promise<ChangedFile[]> {
        const isRecipe = (name: string | undefined): name is string => name?.endsWith('.kerf') === true;
        const gone = changed.flatMap(({ before, after }) => (after === undefined && isRecipe(before) ? [before] : []));
        const fresh = changed.flatMap(({ before, after }) => (before === undefined && isRecipe(after) ? [after] : []));
        if (gone.length === 0 || fresh.length === 0 || gone.length * fresh.length > MOST_PAIRS) return [...changed];
        const then = await Promise.all(gone.map(async (name) => textOf(name, await this.read(from, name, MOST_BYTES))));
        const now = await Promise.all(fresh.map(async (name) => textOf(name, await readPlain(path.join(this.top, name)))));
        const pairs = pairMoved(then.flat(), now.flat());
        const taken = new Set(pairs.values());
        return changed.flatMap(({ before, after }): ChangedFile[] => {
            if (after === undefined) return before !== undefined && taken.has(before) ? [] : [{ before: before! }];
            const formerly = before ?? pairs.get(after);
            return [{ after, ...(formerly === undefined ? {} : { before: formerly }) }];
        });
    }

    /** Every file of a commit, or of the index, and where submodules lie with the commits that they are named by. */
    tree(commit?: Commit): Promise<Tree> {
        const known = commit === undefined ? this.index : this.trees.get(commit.id);
        if (known !== undefined) return known;
        const fresh = this.readTree(commit);
        if (commit === undefined) {
            this.index = fresh;
            const forget = (): void => {
                this.index = undefined;
            };
            fresh.then(forget, forget);
        } else {
            this.trees.set(commit.id, fresh);
            fresh.catch(() => this.trees.delete(commit.id));
        }
        return fresh;
    }

    private async readTree(commit: Commit | undefined): Promise<Tree> {
        const isIndex = commit === undefined || commit.id === staged.id;
        const list = isIndex ? ['ls-files', '-z', '--stage'] : ['ls-tree', '-r', '-z', '--full-tree', commit.id];
        const index = commit?.id === staged.id ? await this.indexInUse() : {};
        const { code, out, complaint } = await runGit({ folder: this.top, args: list, ...index });
        if (code !== 0) throw new GitError(phrase`git: ${complaint}`);
        const entries = names(out).flatMap(readEntry);
        return {
            files: [...new Set(entries.flatMap(({ submodule, name }) => (submodule ? [] : [name])))],
            submodules: new Map(entries.flatMap(({ submodule, name, id }) => (submodule ? [[name, id]] : []))),
            blobs: new Map(entries.flatMap(({ plain, name, id }) => (plain ? [[name, id]] : []))),
        };
    }

    /** The submodule in which a file of a commit would lie. */
    async submoduleAbove(commit: Commit, file: string): Promise<{ readonly at: string; readonly id: string } | undefined> {
        if (!file.includes('/')) return undefined;
        const { submodules } = await this.tree(commit);
        for (const [at, id] of submodules) if (file.startsWith(`${at}/`)) return { at, id };
        return undefined;
    }

    /**
     * Settings by which git compares the work tree as it lies there: a filter that the repository's own settings
     * name is a command, and what was cloned from strangers may name any. Git passes over a filter that is empty.
     */
    private async withoutFilters(): Promise<Record<string, string>> {
        const { out } = await this.run('config', '-z', '--name-only', '--get-regexp', filters);
        return Object.fromEntries(names(out).map((name) => [name, name.endsWith('.required') ? 'false' : '']));
    }

    /** Of a commit that takes only some files git makes an index of its own, and names it to its hooks. One outside of the repository is not read. */
    private async indexInUse(): Promise<{ readonly index?: string }> {
        const named = process.env.GIT_INDEX_FILE;
        if (named === undefined || named === '') return {};
        const index = path.resolve(this.top, named);
        const { own } = await this.stores();
        return insideOf(await realPlace(own), await realPlace(index)) === undefined ? {} : { index };
    }

    private run(...args: string[]) {
        return runGit({ folder: this.top, args });
    }
}

const filters = '^filter\\..*\\.(clean|smudge|process|required)$';

/** A line of `git ls-tree` or `git ls-files --stage`: mode, kind or nothing, object, stage or nothing, name. */
function readEntry(line: string): { submodule: boolean; plain: boolean; id: string; name: string }[] {
    const parts = /^(\d{6}) (?:[a-z]+ )?([0-9a-f]{40,64})(?: \d)?\t(.*)$/s.exec(line);
    return parts === null
        ? []
        : [{ submodule: parts[1] === '160000', plain: parts[1]!.startsWith('100'), id: parts[2]!, name: parts[3]! }];
}

/** Names that cannot be asked for on a line (git-cat-file(1), BATCH OUTPUT). */
function isUnreadable(file: string): boolean {
    return /[\n\0]/.test(file);
}

/** `git log -z --name-status`: five fields a commit, then a letter and a name for each file, the first letter behind a line end; of a merge none. */
function fileCommits(fields: readonly string[], file: string): FileCommit[] {
    const commits: FileCommit[] = [];
    for (let i = 0; i + 4 < fields.length; ) {
        const [id, parents, day, time, subject] = fields.slice(i, i + 5) as [string, string, string, string, string];
        i += 5;
        let adds = false;
        for (; /^\n?[A-Z]\d*$/.test(fields[i] ?? ''); i += 2) adds ||= fields[i]!.trim() === 'A' && fields[i + 1] === file;
        const before = parents.split(' ').filter((parent) => parent !== '');
        commits.push({ id, day, subject, time: Number(time), parents: before, adds });
    }
    return commits;
}

/** Why there is no blob (git-cat-file(1), BATCH OUTPUT). */
function refusal(head: string): { problem: 'missing' | 'outside' } {
    if (/^symlink \d+$/.test(head)) return { problem: 'outside' };
    return { problem: 'missing' };
}

/** `git diff --name-status -z`: a letter, then one name, or two for what was renamed or copied. */
/** Files of recipes are not compared in greater number, nor when they are larger, bytes. */
const MOST_PAIRS = 2500;
const MOST_BYTES = 1_000_000;

/** A plain file of the work tree; links are not followed. */
async function readPlain(file: string): Promise<{ readonly bytes: Uint8Array } | { readonly problem: string }> {
    try {
        const found = await lstat(file);
        return found.isFile() && found.size <= MOST_BYTES ? { bytes: await readFile(file) } : { problem: 'unreadable' };
    } catch {
        return { problem: 'unreadable' };
    }
}

function textOf(name: string, read: { readonly bytes: Uint8Array } | { readonly problem: string }): NamedText[] {
    return 'problem' in read ? [] : [{ name, text: new TextDecoder().decode(read.bytes) }];
}

function nameStatus(text: string): ChangedFile[] {
    const parts = text.split('\0');
    const changed: ChangedFile[] = [];
    for (let i = 0; i + 1 < parts.length; ) {
        const status = parts[i++]!;
        const name = parts[i++]!;
        if (status.startsWith('R')) changed.push({ before: name, after: parts[i++]! });
        else if (status.startsWith('C')) changed.push({ after: parts[i++]! });
        else if (status.startsWith('A')) changed.push({ after: name });
        else if (status.startsWith('D')) changed.push({ before: name });
        else changed.push({ before: name, after: name });
    }
    return changed;
}

function names(out: Buffer): string[] {
    return out
        .toString('utf8')
        .split('\0')
        .filter((name) => name !== '');
}
