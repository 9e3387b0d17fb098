import type { LangiumDocument } from 'langium';
import type { CancellationToken, Connection } from 'vscode-languageserver';
import { isBuiltIn } from '../../language/built-in';
import { momentOf } from '../../shared/quantity/calendar';
import { phrase } from '../../shared/recipe/phrase';
import { familiesOf } from '../../shared/review/families';
import type { BenchParams, CompareParams, PageAnswer, SeasonParams, TableParams, WeekParams } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { RecipeJob } from '../engine/jobs';
import { onRequest } from '../protocol/on-request';
import { seasonJob } from '../week/season-jobs';
import { weekJob } from '../week/week-jobs';
import type { Workshop } from '../workshop/workshop';
import { historyJob, isToldBy } from './history-jobs';
import type { OpenVersion } from './open-version';
import { reviewJobs } from './review-files';
import { allRecipes, tableJob } from './table-jobs';
import type { NoVersion, OpenedFile, Versions } from './versions';

/** Answers what the editor asks about earlier versions of its files. */
export function answerReviewRequests(connection: Connection, workshop: Workshop, versions: Versions | undefined): void {
    onRequest(connection, requests.compare, (params, token) => compare(workshop, versions, params, token));
    onRequest(connection, requests.table, (params, token) => table(workshop, params, token));
    onRequest(connection, requests.week, (params, token) => week(workshop, params, token));
    onRequest(connection, requests.season, (params, token) => season(workshop, params, token));
    onRequest(connection, requests.history, (params, token) =>
        history(workshop, params.present === true ? undefined : versions, params, token),
    );
    onRequest(connection, requests.revisions, async ({ uri }) => {
        const found = await (versions?.choices(uri) ?? noVersions());
        return 'problem' in found ? found : { revisions: found };
    });
    onRequest(connection, requests.revisionPlaces, async ({ uri }) => versions?.places(uri) ?? noVersions());
}

function noVersions(): NoVersion {
    return {
        problem: phrase`Earlier versions are read by git, which an editor that is only a browser does not have.`,
        final: true,
    };
}

function notRead(): PageAnswer {
    return { problem: phrase`This file is not read as a recipe file: open it, or a folder that holds it.` };
}

/** The text as the editor has it now, saved or not, beside what it is to be compared with. */
async function compare(
    workshop: Workshop,
    versions: Versions | undefined,
    params: CompareParams,
    token: CancellationToken,
): Promise<PageAnswer | null> {
    const document = await workshop.linked(params.uri, token);
    if (document === undefined) return notRead();
    const before = await earlier(workshop, versions, params, token);
    if (token.isCancellationRequested) return null;
    if ('problem' in before) return before;
    const name = nameOf(document);
    const after = here(workshop, document, name, before.name === name ? `${name} in the editor` : name);
    const reviews = await reviewJobs(before.version, after, { before: before.name, after: name }, { pictures: true });
    if (token.isCancellationRequested) return null;
    if (reviews.length === 0)
        return {
            problem: phrase`There is no recipe in this file, now or then. What changes in stock shows in the recipes that use it.`,
            ...broken(workshop, document),
        };
    const body = await bodyOf(workshop, { do: 'review-page', reviews }, `compare ${document.uri.toString()}`, token);
    return { title: name, body, ...broken(workshop, document) };
}

/** A text that is being typed may lack a brace. */
function broken(workshop: Workshop, document: LangiumDocument): { readonly broken?: string } {
    const finding = workshop.textFindings(document).find(({ rule }) => rule === 'syntax');
    return finding === undefined ? {} : { broken: finding.message };
}

/** The family of the recipe at a place, or else the first family of the file. */
async function table(workshop: Workshop, params: TableParams, token: CancellationToken): Promise<PageAnswer | null> {
    const document = await workshop.linked(params.uri, token);
    if (document === undefined) return notRead();
    const known = allRecipes(workshop);
    const ours = known.filter((each) => each.document === document).map(({ recipe }) => recipe);
    const at = workshop.recipe(document, params.recipe, params.offset);
    const families = familiesOf(known.map(({ recipe }) => recipe)).filter((family) =>
        family.some((recipe) => ours.includes(recipe)),
    );
    const family =
        families.find((some) => some.some(({ name, whole }) => name === at?.name && whole.uri === at.whole.uri)) ?? families[0];
    if (family === undefined)
        return { problem: phrase`No recipe here is based on another, and none is based on it.`, ...broken(workshop, document) };
    const job = tableJob('table-page', workshop, family, known, params.all === true);
    const body = await bodyOf(workshop, job, `table ${document.uri.toString()}`, token);
    const about = at === undefined || !family.some(({ name }) => name === at.name) ? {} : { recipe: at.name };
    return { title: family[0]!.name, body, ...about, ...broken(workshop, document) };
}

/** Over all files that are open or lie in the folders. */
async function week(
    workshop: Workshop,
    { uri, start, makers = 1, closed }: WeekParams,
    token: CancellationToken,
): Promise<PageAnswer | null> {
    const document = await workshop.linked(uri, token);
    if (document === undefined) return notRead();
    const moment = momentOf(start);
    if (moment === undefined) return { problem: phrase`${start} is no day, such as 2026-11-26.`, final: true };
    const asked = { start: moment, makers: Math.min(99, Math.max(1, makers)), closed: closed.filter((day) => day < 7) };
    const job = await weekJob('week-page', workshop, filesOf(workshop), asked);
    if (job.entries.length === 0) return { problem: phrase`All that was ordered is made or delivered, or there is no recipe.` };
    return { title: start.slice(0, 10), body: await bodyOf(workshop, job, 'week', token), ...broken(workshop, document) };
}

/** All runs of the files that are open or lie in the folders. */
async function season(workshop: Workshop, { uri, from, to }: SeasonParams, token: CancellationToken): Promise<PageAnswer | null> {
    const document = await workshop.linked(uri, token);
    if (document === undefined) return notRead();
    const job = await seasonJob('season-page', workshop, filesOf(workshop), from, to);
    if (job.runs.length === 0) return { problem: phrase`No run is written down for these days.` };
    return { title: from ?? '', body: await bodyOf(workshop, job, 'season', token), ...broken(workshop, document) };
}

/** The shop's own files; some hold orders and no recipe. */
function filesOf(workshop: Workshop): LangiumDocument[] {
    return workshop.services.shared.workspace.LangiumDocuments.all.filter(({ uri }) => !isBuiltIn(uri.toString())).toArray();
}

/** The runs of the recipe at a place, or else of the first that has any in this file, be it the recipe’s or a run’s own. */
async function history(
    workshop: Workshop,
    versions: Versions | undefined,
    params: BenchParams,
    token: CancellationToken,
): Promise<PageAnswer | null> {
    const document = await workshop.linked(params.uri, token);
    if (document === undefined) return notRead();
    const known = allRecipes(workshop);
    const ours = known.filter((each) => isToldBy(document, each));
    const at = workshop.recipe(document, params.recipe, params.offset);
    const placed = ours.find(({ recipe }) => recipe.name === at?.name) ?? ours[0];
    if (placed === undefined) {
        return {
            problem: phrase`No run is written down in this file. Tick a recipe off in the checklist and finish the run, or write one below it.`,
            ...broken(workshop, document),
        };
    }
    const job = await historyJob('history-page', versions, placed, mostRuns);
    if (token.isCancellationRequested) return null;
    const body = await bodyOf(workshop, job, `history ${document.uri.toString()}`, token);
    return { title: placed.recipe.name, body, recipe: placed.recipe.name, ...broken(workshop, document) };
}

/** What the worker makes of a job, unless it is given up; a newer job on the same subject takes its place. */
function bodyOf(
    workshop: Workshop,
    job: RecipeJob & { readonly do: `${string}-page` },
    subject: string,
    token: CancellationToken,
): Promise<string> {
    return workshop.ask(job, subject, { onCancel: (giveUp) => token.onCancellationRequested(giveUp) });
}

/** More runs than these are not shown one by one. */
const mostRuns = 20;

async function earlier(
    workshop: Workshop,
    versions: Versions | undefined,
    { uri, before, revision = 'HEAD' }: CompareParams,
    token: CancellationToken,
): Promise<OpenedFile | NoVersion> {
    if (before === undefined) return versions === undefined ? noVersions() : versions.open(uri, revision);
    const document = await workshop.linked(before, token);
    if (document === undefined) return { problem: phrase`The other file is not read as a recipe file.` };
    const name = nameOf(document);
    return { version: here(workshop, document, name, name), name };
}

function here(workshop: Workshop, document: LangiumDocument, name: string, label: string): OpenVersion {
    return { workshop, documents: new Map([[name, document]]), label: () => label };
}

function nameOf({ uri }: LangiumDocument): string {
    return uri.path.slice(uri.path.lastIndexOf('/') + 1);
}
