import path from 'node:path';
import { reviewMarkdown } from '../../shared/review/as-markdown';
import { reviewText } from '../../shared/review/as-text';
import { reviewHtml } from '../../shared/review/html/as-html';
import { plainJson } from '../../shared/review/one-line';
import { reviewSchema } from '../../shared/review/review';
import { LocalAsker } from '../engine/asker';
import type { ReviewAnswer } from '../engine/jobs';
import { openRevision } from '../git/open-revision';
import { realPlace } from '../git/real-place';
import { Renames } from '../git/renames';
import type { ChangedFile, Commit, Repository } from '../git/repository';
import { insideOf } from '../git/revision-files';
import { filesThrough } from '../git/submodules';
import type { OpenVersion } from '../review/open-version';
import { type FilePair, type ReviewWish, reviewFile } from '../review/review-files';
import { say } from './say';
import { changesIn, repositoryHere, touchedBy } from './since';
import type { ChoiceOf } from './usage/command-usage';
import { readArgs } from './usage/read-args';
import { diffUsage } from './usage/usages';
import { UsageError } from './usage-error';
import { openFile, openWorkTree } from './version-source';

const formats: Readonly<Record<ChoiceOf<typeof diffUsage, 'format'>, (answers: readonly ReviewAnswer[]) => string>> = {
    text: (answers) => answers.map(({ review }) => reviewText(review)).join('\n'),
    markdown: (answers) => reviewMarkdown(answers.map(({ review }) => review)),
    json: (answers) => `${plainJson({ schema: reviewSchema, reviews: answers.map(({ review }) => review) })}\n`,
    html: reviewHtml,
};

/**
 * `kerfbook diff`: what differs between two versions of recipes, and what follows from it. Two files;
 * a revision and the work tree; or two revisions. Exit code 0, or with --exit-code 1 where something differs.
 */
export async function diff(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(diffUsage, args);
    const format = formats[values.format];
    const files = positionals.filter(isFileName);
    const revisions = positionals.filter((name) => !isFileName(name));
    const wish: ReviewWish = {
        pictures: values.format === 'html',
        // Only these say nothing of what stays as it is.
        brief: values.format === 'text' || values.format === 'markdown',
        ...(values.recipe !== undefined && { recipe: values.recipe }),
    };
    const answers = revisions.length > 0 ? await ofRevisions(revisions, files, wish) : await ofFiles(files, values.as, wish);
    if (answers.length === 0 && files.length > 0) {
        throw new UsageError(
            values.recipe === undefined ? 'There is no recipe on either side.' : `There is no recipe ${values.recipe}.`,
        );
    }
    say(answers.length === 0 && values.format === 'text' ? 'No recipe differs.\n' : format(answers));
    return values['exit-code'] && answers.some(({ review }) => !review.same) ? 1 : 0;
}

function isFileName(name: string): boolean {
    return name.endsWith('.kerf') || name === '/dev/null' || name === 'nul';
}

async function ofFiles(files: readonly string[], as: string | undefined, wish: ReviewWish): Promise<ReviewAnswer[]> {
    const [before, after] = files;
    if (before === undefined || after === undefined || files.length > 2) {
        throw new UsageError('Say what to compare: two files (*.kerf), or one or two revisions and a file.');
    }
    return reviewFile(await openFile(before, as), await openFile(after, as), { before, after }, wish);
}

async function ofRevisions(revisions: readonly string[], files: readonly string[], wish: ReviewWish): Promise<ReviewAnswer[]> {
    if (revisions.length > 2) throw new UsageError('Compare one revision with the work tree, or two revisions.');
    const repository = await repositoryHere(files[0] === undefined ? process.cwd() : path.dirname(await realPlace(files[0])));
    const from = await startOf(repository, revisions[0]!);
    const to = revisions[1] === undefined ? undefined : await repository.commit(revisions[1]);
    const changes = await changesIn(repository, from, to);
    const renames = new Renames(changes);
    const named = await Promise.all(files.map((file) => nameIn(repository, file)));
    const asked = named.map((name) => renames.pair(name));
    const now = files.length > 0 ? asked.map(({ after }) => after) : await recipesHere(repository, to, changes);
    const after =
        to === undefined ? await openWorkTree(repository, now) : await openRevision(repository, to, now, new LocalAsker());
    const pairs = files.length > 0 ? asked : await touched(after, repository, changes, renames);
    const before = await openRevision(
        repository,
        from,
        pairs.map((pair) => pair.before),
        new LocalAsker(),
    );
    const answers: ReviewAnswer[] = [];
    for (const pair of pairs) answers.push(...(await reviewFile(before, after, pair, wish)));
    return answers;
}

/** A revision, or with three dots behind it the place where this branch left that one, as git has it. */
async function startOf(repository: Repository, revision: string): Promise<Commit> {
    if (!revision.endsWith('...')) return repository.commit(revision);
    return repository.forkPoint(await repository.commit(revision.slice(0, -3)));
}

async function nameIn(repository: Repository, file: string): Promise<string> {
    const name = insideOf(repository.top, await realPlace(file));
    if (name === undefined) throw new UsageError(`${file} lies outside the repository.`);
    return name;
}

/** Every recipe file below this folder. */
async function recipesHere(repository: Repository, to: Commit | undefined, changes: readonly ChangedFile[]): Promise<string[]> {
    const fresh = to === undefined ? changes.flatMap(({ after }) => after ?? []) : [];
    return [...new Set([...(await filesThrough(repository, to)), ...fresh])].filter((name) => isHere(name, repository));
}

function isHere(name: string, repository: Repository): boolean {
    const here = insideOf(repository.top, process.cwd());
    return name.endsWith('.kerf') && (here === undefined || name.startsWith(`${here}/`));
}

/** The files that a change reaches, and those that are gone. */
async function touched(
    after: OpenVersion,
    repository: Repository,
    changes: readonly ChangedFile[],
    renames: Renames,
): Promise<FilePair[]> {
    const reached = new Set(await touchedBy(changes, repository, after.workshop, [...after.documents.values()]));
    const names = [...after.documents].flatMap(([name, document]) => (reached.has(document) ? [name] : []));
    const gone = changes.flatMap(({ before, after: now }) => (now === undefined && before !== undefined ? [before] : []));
    return [...names, ...gone.filter((name) => isHere(name, repository))].map((name) => renames.pair(name));
}
