import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { phrase } from '../../shared/recipe/phrase';
import type { RevisionChoice, RevisionPlaces } from '../../shared/view/protocol';
import type { Asker } from '../engine/asker';
import type { PastRecipe } from '../engine/jobs';
import { largestRecipe } from '../files/guarded-file-system';
import type { WorkspaceFiles } from '../files/workspace-files';
import type { OpenVersion } from '../review/open-version';
import type { NoVersion, OpenedFile, Versions, WantedPast } from '../review/versions';
import { CannotOpen } from '../workshop/cannot-open';
import { type FileVersion, historyOf } from './file-history';
import { insideOf } from './inside-of';
import { openRevision } from './open-revision';
import { realPlace } from './real-place';
import { Renames } from './renames';
import { type Commit, Repository } from './repository';
import { RevisionFiles } from './revision-files';
import { revisionPlaces } from './revision-places';
import { GitError } from './run-git';
import { statedRevisions } from './stated-revision';

/** More versions than these are not kept opened. */
const mostKept = 4;
/** So many revisions are opened, the newest ones. */
const mostPast = 30;
/** So many commits of a file are read at a time. */
const AT_ONCE = 100;
/** More commits of one file than these are not offered. */
const mostOffered = 30;

/** Earlier versions out of git's own store. Of a repository that is larger than the workspace only the workspace is read. */
export class GitVersions implements Versions {
    /** A commit never changes, so what was opened of it stays as it is. */
    private readonly opened = new Map<string, Promise<OpenVersion>>();

    constructor(
        private readonly files: WorkspaceFiles,
        private readonly asker: Asker,
    ) {}

    async open(uri: string, revision: string): Promise<OpenedFile | NoVersion> {
        return plainly(async () => {
            const { repository, name: now } = await this.place(uri);
            const commit = await commitOf(repository, revision);
            const name = await nameThen(repository, commit, now);
            return { version: await this.version(repository, commit, name), name };
        });
    }

    async choices(uri: string): Promise<readonly RevisionChoice[] | NoVersion> {
        return plainly(async () => {
            const { repository, name } = await this.place(uri);
            await commitOf(repository, 'HEAD');
            const commits = await historyOf(repository, name, mostOffered);
            return [
                ...commits.map(
                    ({ id, day, subject }): RevisionChoice => ({
                        revision: id,
                        kind: 'commit',
                        name: shortName(id),
                        day,
                        subject,
                    }),
                ),
                ...(await repository.names()),
            ];
        });
    }

    async places(uri: string): Promise<RevisionPlaces | NoVersion> {
        return plainly(async () => {
            const { repository } = await this.place(uri);
            // What stands where is read last: a change meanwhile is seen by whoever watches the places.
            const places = await revisionPlaces(repository);
            return { places, now: await repository.standing() };
        });
    }

    async past(
        uri: string,
        recipe: string,
        wanted: readonly WantedPast[],
        tell: (part: number) => void = () => {},
    ): Promise<readonly (PastRecipe | undefined)[]> {
        const found = wanted.map((): PastRecipe | undefined => undefined);
        await plainly(async () => {
            const { repository, name: now } = await this.place(uri);
            const open = new Set([...wanted.keys()].filter((at) => isLookedFor(wanted[at]!)));
            let left = mostPast;
            const all = await historyOf(repository, now, Number.POSITIVE_INFINITY);
            const reached = new Map<string, Promise<boolean>>();
            for (let from = 0; from < all.length && open.size > 0 && left > 0; from += AT_ONCE) {
                tell(from / all.length);
                const versions = all.slice(from, from + AT_ONCE);
                const texts = await Promise.all(versions.map((version) => this.textOf(repository, version, reached)));
                for (const [index, version] of versions.entries()) {
                    const asked = [...open].filter((at) => serves(version, wanted[at]!, found[at]));
                    const wishes = asked.map((at) => wanted[at]!);
                    const then = await this.recipeOf(repository, version, texts[index], recipe, wishes);
                    if (then === undefined) continue;
                    settle(then, version, wanted, found, open);
                    if (--left <= 0) break;
                }
            }
            return found;
        });
        return found;
    }

    /**
     * A file as a commit left it; undefined where it cannot be read, or lay in a folder that the workspace does not reach.
     * @param reached what is known of each name by then
     */
    private async textOf(
        repository: Repository,
        { id, file }: FileVersion,
        reached: Map<string, Promise<boolean>>,
    ): Promise<string | undefined> {
        const commit = { id, name: shortName(id) };
        const known = reached.get(file) ?? this.reaches(new RevisionFiles(repository, commit).uriOf(file));
        reached.set(file, known);
        if (!(await known)) return undefined;
        const text = await repository.read(commit, file, largestRecipe);
        return 'problem' in text ? undefined : new TextDecoder().decode(text.bytes);
    }

    /** A recipe as a commit left it, where it had a revision then that somebody looks for. */
    private async recipeOf(
        repository: Repository,
        { id, file }: FileVersion,
        text: string | undefined,
        recipe: string,
        wanted: readonly WantedPast[],
    ): Promise<Omit<PastRecipe, 'isOfDay'> | undefined> {
        if (text === undefined || wanted.length === 0) return undefined;
        // Looking through a text is cheap, opening it with all that it uses is not.
        const stated = statedRevisions(text, recipe);
        const isWanted = (has: (revision: number) => boolean): boolean =>
            wanted.some(({ revision }) => revision === undefined || has(revision));
        if (stated !== undefined && (stated.size === 0 || !isWanted((revision) => stated.has(revision)))) return undefined;
        const commit = { id, name: shortName(id) };
        const { workshop, documents } = await this.version(repository, commit, file);
        const document = documents.get(file);
        const then = document && workshop.recipe(document, recipe);
        if (then === undefined || !isWanted((revision) => revision === then.revision)) return undefined;
        return { recipe: then, commit: commit.name };
    }

    private async place(uri: string): Promise<{ repository: Repository; name: string }> {
        const place = await this.files.resolve(uri);
        if ('problem' in place)
            throw new CannotOpen(phrase`Only files that are saved in the workspace can be compared with a revision.`);
        const file = await realPlace(fileURLToPath(uri));
        const repository = await Repository.of(path.dirname(file));
        if (repository === undefined) throw new CannotOpen(phrase`${path.basename(file)} does not lie in a git repository.`);
        const name = insideOf(repository.top, file);
        if (name === undefined) throw new CannotOpen(phrase`${path.basename(file)} does not lie in its repository.`);
        return { repository, name };
    }

    private version(repository: Repository, commit: Commit, name: string): Promise<OpenVersion> {
        const key = [repository.top, commit.id, commit.name, name].join('\n');
        const known = this.opened.get(key);
        if (known !== undefined) return known;
        const fresh = openRevision(repository, commit, [name], this.asker, (uri) => this.reaches(uri));
        this.opened.set(key, fresh);
        fresh.catch(() => this.opened.delete(key));
        for (const oldest of this.opened.keys()) {
            if (this.opened.size <= mostKept) break;
            this.opened.delete(oldest);
        }
        return fresh;
    }

    /** Whether a file lies in the workspace, be it there now or not. */
    private async reaches(uri: string): Promise<boolean> {
        const place = await this.files.resolve(uri);
        return !('problem' in place) || place.problem !== 'outside';
    }
}

/** Nothing is asked of a run that says neither its revision nor a day to look for. */
function isLookedFor({ revision, day }: WantedPast): boolean {
    return revision !== undefined || day !== undefined;
}

function isBy({ day }: FileVersion, wanted: string | undefined): boolean {
    return wanted !== undefined && day <= wanted;
}

/** Versions come newest first: the first by its day is the one, and before that the newest of its revision may stand in. */
function serves(version: FileVersion, { revision, day, orNewest }: WantedPast, found: PastRecipe | undefined): boolean {
    if (day === undefined || isBy(version, day)) return true;
    return found === undefined && orNewest === true && revision !== undefined;
}

/** What git or a person's own repository is in the way of is said, not thrown. */
async function plainly<T>(work: () => Promise<T>): Promise<T | NoVersion> {
    try {
        return await work();
    } catch (error) {
        if (error instanceof GitError || error instanceof CannotOpen) return { problem: error.message };
        throw error;
    }
}

async function commitOf(repository: Repository, revision: string): Promise<Commit> {
    if (revision !== 'HEAD') {
        const commit = await repository.commit(revision);
        return revision === commit.id ? { ...commit, name: shortName(commit.id) } : commit;
    }
    return repository.commit('HEAD').catch((error: unknown) => {
        throw error instanceof GitError ? new CannotOpen(phrase`Nothing has been committed in this repository yet.`) : error;
    });
}

function shortName(id: string): string {
    return id.slice(0, 8);
}

/**
 * What a file was called in a commit. Renames are only looked for where it had another name: in what
 * differs between then and now, and where that is too much to know it again, step by step.
 */
async function nameThen(repository: Repository, commit: Commit, now: string): Promise<string> {
    if (await repository.has(commit, now)) return now;
    const { before } = new Renames(await repository.changes(commit)).pair(now);
    if (before !== now && (await repository.has(commit, before))) return before;
    const names = new Set((await historyOf(repository, now, Number.POSITIVE_INFINITY)).map(({ file }) => file));
    for (const name of names) if (await repository.has(commit, name)) return name;
    throw new CannotOpen(phrase`${now} is not in ${commit.name}: it is new, or it was called something that git cannot tell.`);
}

/** Lays a recipe of a commit down for all who ask for it; what nothing in an earlier commit could be nearer to is looked for no more. */
function settle(
    then: Omit<PastRecipe, 'isOfDay'>,
    version: FileVersion,
    wanted: readonly WantedPast[],
    found: (PastRecipe | undefined)[],
    open: Set<number>,
): void {
    for (const at of open) {
        const { revision, day } = wanted[at]!;
        if (!serves(version, wanted[at]!, found[at]) || (revision ?? then.recipe.revision) !== then.recipe.revision) continue;
        const isOfDay = isBy(version, day);
        found[at] = { ...then, isOfDay };
        if (isOfDay || day === undefined) open.delete(at);
    }
}
