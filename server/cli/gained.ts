import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { stepTitle } from '../../shared/plan/step-title';
import type { Where } from '../../shared/quantity/where';
import type { Severity } from '../../shared/recipe/finding';
import { groupBy } from '../../shared/review/group-by';
import { LocalAsker } from '../engine/asker';
import { insideOf } from '../git/inside-of';
import { openRevision } from '../git/open-revision';
import { realPlace } from '../git/real-place';
import { Renames } from '../git/renames';
import { type ChangedFile, type Commit, type Repository, staged } from '../git/repository';
import { GitError } from '../git/run-git';
import { filesThrough } from '../git/submodules';
import { inAllFiles, type PlacedFinding } from '../report/placed-finding';
import type { OpenFiles } from '../workshop/open-workshop';
import { allFindings, shortPath } from './all-findings';
import { repositoryHere } from './since';
import { UsageError } from './usage-error';

/** The recipe files that are staged below this folder, or those that were named, as the index holds them. */
export async function openStaged(names: readonly string[]): Promise<OpenFiles> {
    const repository = await repositoryHere();
    const here = await nameIn(repository, process.cwd());
    const wanted = await Promise.all(names.map((name) => nameIn(repository, name)));
    const under = names.length === 0 ? [here] : wanted;
    const files = (await filesThrough(repository, staged)).filter(
        (file) => file.endsWith('.kerf') && under.some((top) => top === '' || file === top || file.startsWith(`${top}/`)),
    );
    const { workshop, documents } = await openRevision(repository, staged, files, new LocalAsker());
    return { workshop, documents: [...documents.values()] };
}

/** '' for the repository's top. */
async function nameIn({ top }: Repository, name: string): Promise<string> {
    const place = await realPlace(name);
    const inside = place === top ? '' : insideOf(top, place);
    if (inside === undefined) throw new UsageError(`${name} lies outside the repository.`);
    return inside;
}

/** Where the change begins: the fork from a revision, or the last commit; undefined before the first one. */
export async function startOf(repository: Repository, since: string | undefined, isStaged: boolean): Promise<Commit | undefined> {
    if (since !== undefined) return repository.forkPoint(await repository.commit(since));
    try {
        return await repository.commit('HEAD');
    } catch (error) {
        if (isStaged && error instanceof GitError) return undefined;
        throw error;
    }
}

/**
 * The findings that an earlier commit has not, file by file, under the names that those had then. A finding that merely says another number is
 * the same as long as it is no more grave and stands in the same step.
 */
export async function gainedSince(
    repository: Repository,
    from: Commit,
    changes: readonly ChangedFile[],
    now: OpenFiles,
    findings: readonly PlacedFinding[],
): Promise<PlacedFinding[]> {
    const renames = new Renames(changes);
    const names = await Promise.all(now.documents.map((document) => nameIn(repository, fileURLToPath(document.uri.toString()))));
    const pairs = names.map((name) => renames.pair(name));
    const { workshop, documents } = await openRevision(
        repository,
        from,
        pairs.map((pair) => pair.before),
        new LocalAsker(),
    );
    const then = { workshop, documents: [...documents.values()] };
    const found: PlacedFinding[][] = [];
    for (const document of then.documents) found.push(await allFindings(workshop, document));
    const placeNow = new Map(
        pairs.map(({ before, after }) => [path.join(repository.top, before), path.join(repository.top, after)]),
    );
    const left = groupBy(inAllFiles(found), (each) => keyOf(each, then, (file) => placeNow.get(file) ?? file));
    const take = (each: PlacedFinding, isSame: (old: PlacedFinding) => boolean): boolean => {
        const had = left.get(keyOf(each, now, (file) => file)) ?? [];
        const at = had.findIndex((old) => isSame(old) && !isGraver(each, old));
        if (at >= 0) had.splice(at, 1);
        return at >= 0;
    };
    // What says the same goes first, so that it is not taken for one that says something else.
    const changed = findings.filter((each) => !take(each, (old) => old.finding.message === each.finding.message));
    return changed.filter((each) => !take(each, () => true));
}

/** File, rule, recipe and step of a finding: one with the same is the same finding. */
function keyOf({ finding, file }: PlacedFinding, { workshop, documents }: OpenFiles, placeNow: (file: string) => string): string {
    const document = documents.find((each) => shortPath(each) === file);
    const recipe = (document === undefined ? [] : workshop.recipes(document)).find(({ whole }) => holds(whole, finding.where));
    const step = recipe?.steps.find(
        ({ index, whole }) => index === finding.step || (finding.step === undefined && holds(whole, finding.where)),
    );
    return [placeNow(path.resolve(file)), finding.rule, recipe?.name ?? '', step === undefined ? '' : stepTitle(step)].join('\n');
}

function holds(whole: Where, { uri, offset }: Where): boolean {
    return whole.uri === uri && whole.offset <= offset && offset < whole.offset + whole.length;
}

const gravity: readonly Severity[] = ['hint', 'info', 'warning', 'error'];

function isGraver(now: PlacedFinding, old: PlacedFinding): boolean {
    return gravity.indexOf(now.finding.severity) > gravity.indexOf(old.finding.severity);
}
