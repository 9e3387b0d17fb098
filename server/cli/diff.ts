import path from 'node:path';
import type { File } from '../../language/generated/ast';
import { plainJson } from '../../shared/review/one-line';
import { reviewSchema } from '../../shared/review/review';
import type { ReviewAnswer } from '../engine/jobs';
import { insideOf } from '../git/inside-of';
import { realPlace } from '../git/real-place';
import { Renames } from '../git/renames';
import type { ChangedFile, Commit, Repository } from '../git/repository';
import { filesThrough } from '../git/submodules';
import type { OpenVersion } from '../review/open-version';
import type { FilePair, ReviewWish } from '../review/review-files';
import type { DiffDocument } from './formats/documents';
import { say } from './say';
import { changesIn, repositoryHere, touchedBy } from './since';
import type { ChoiceOf } from './usage/command-usage';
import { readArgs } from './usage/read-args';
import { diffUsage } from './usage/usages';
import { UsageError } from './usage-error';

const formats: Readonly<
    Record<
        ChoiceOf<typeof diffUsage, 'format'>,
        (answers: readonly ReviewAnswer[], untouched: readonly string[]) => Promise<string>
    >
> = {
    text: async (answers, untouched) => {
        const { reviewsText } = await import('../../shared/review/as-text');
        return reviewsText(
            answers.map(({ review }) => review),
            untouched,
        );
    },
    markdown: async (answers, untouched) => {
        const { reviewMarkdown } = await import('../../shared/review/as-markdown');
        return reviewMarkdown(
            answers.map(({ review }) => review),
            untouched,
        );
    },
    json: async (answers, untouched) => {
        const reviews = answers.map(({ review }) => review);
        const [{ headOf }, { withoutNoise }] = await Promise.all([
            import('../../shared/review/head'),
            import('../../shared/review/without-noise'),
        ]);
        const head = headOf(reviews.map(withoutNoise), untouched);
        return `${plainJson({ schema: reviewSchema, head, reviews } satisfies DiffDocument)}\n`;
    },
    html: async (answers, untouched) => (await import('../../shared/review/html/as-html')).reviewHtml(answers, untouched),
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
    const { answers, untouched } =
        revisions.length > 0
            ? await ofRevisions(revisions, files, wish)
            : { answers: await ofFiles(files, values.as, wish), untouched: [] };
    if (answers.length === 0 && files.length > 0) {
        throw new UsageError(
            values.recipe === undefined ? 'There is no recipe on either side.' : `There is no recipe ${values.recipe}.`,
        );
    }
    say(answers.length === 0 && values.format === 'text' ? 'No recipe differs.\n' : await format(answers, untouched));
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
    const { openFile, reviewFile } = await import('./compare-versions');
    return reviewFile(await openFile(before, as, 'before'), await openFile(after, as, 'after'), { before, after }, wish);
}

async function ofRevisions(revisions: readonly string[], files: readonly string[], wish: ReviewWish): Promise<Reviewed> {
    if (revisions.length > 2) throw new UsageError('Compare one revision with the work tree, or two revisions.');
    const repository = await repositoryHere(files[0] === undefined ? process.cwd() : path.dirname(await realPlace(files[0])));
    const commits = Promise.all([startOf(repository, revisions[0]!), revisions[1] && repository.commit(revisions[1])]);
    // Git looks while the program reads the rest of itself and the built-in stock: both take a good part of it all.
    const language = import('./compare-versions');
    const [from, second] = await commits;
    const to = second || undefined;
    const looking = lookIn(repository, files, from, to);
    const now = looking.then((found) => found.now);
    const { openRevision, openWorkTree, LocalAsker, reviewFile } = await heard(language, now);
    const after = to === undefined ? openWorkTree(repository, now) : openRevision(repository, to, now, new LocalAsker());
    const { changes, renames, asked } = await heard(looking, after);
    const pairs = asked ?? (await touched(await after, repository, changes, renames));
    const before = await openRevision(
        repository,
        from,
        pairs.map((pair) => pair.before),
        new LocalAsker(),
    );
    const answers: ReviewAnswer[] = [];
    for (const pair of pairs) answers.push(...(await reviewFile(before, await after, pair, wish)));
    return { answers, untouched: asked === undefined ? recipesBut(pairs, await after) : [] };
}

interface Reviewed {
    readonly answers: readonly ReviewAnswer[];
    /** Names of the recipes that the change does not reach. */
    readonly untouched: readonly string[];
}

/** The recipes of all other files, by their names in the text alone: nothing of them is worked out. */
function recipesBut(pairs: readonly FilePair[], { documents }: OpenVersion): string[] {
    const reached = new Set(pairs.map(({ after }) => after));
    return [...documents].flatMap(([name, { parseResult }]) =>
        reached.has(name)
            ? []
            : (parseResult.value as File).entries.flatMap((entry) =>
                  entry.$type === 'Recipe' && 'name' in entry ? [entry.name] : [],
              ),
    );
}

/** The one promise, while another goes on that is awaited later: should that fail first, it is still heard then. */
function heard<T>(promise: Promise<T>, other: Promise<unknown>): Promise<T> {
    other.catch(() => {});
    return promise;
}

interface Looked {
    readonly changes: readonly ChangedFile[];
    readonly renames: Renames;
    /** The files that were named, under both of their names; undefined where none were. */
    readonly asked: readonly FilePair[] | undefined;
    /** What is to be read of the later version. */
    readonly now: readonly string[];
}

async function lookIn(repository: Repository, files: readonly string[], from: Commit, to: Commit | undefined): Promise<Looked> {
    const known = filesThrough(repository, to);
    const changes = await heard(changesIn(repository, from, to), known);
    const renames = new Renames(changes);
    if (files.length === 0) return { changes, renames, asked: undefined, now: recipesHere(repository, to, await known, changes) };
    const asked = (await Promise.all(files.map((file) => nameIn(repository, file)))).map((name) => renames.pair(name));
    return { changes, renames, asked, now: asked.map(({ after }) => after) };
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
function recipesHere(
    repository: Repository,
    to: Commit | undefined,
    known: readonly string[],
    changes: readonly ChangedFile[],
): string[] {
    const fresh = to === undefined ? changes.flatMap(({ after }) => after ?? []) : [];
    return [...new Set([...known, ...fresh])].filter((name) => isHere(name, repository));
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
