import type { LangiumDocument } from 'langium';
import type { CancellationToken, Connection } from 'vscode-languageserver';
import { type CompareParams, method, type PageAnswer, type RevisionsAnswer } from '../../shared/view/protocol';
import { Cancelled } from '../engine/jobs';
import type { Workshop } from '../workshop/workshop';
import type { OpenVersion } from './open-version';
import { reviewJobs } from './review-files';
import type { NoVersion, OpenedFile, Versions } from './versions';

/** Answers what the editor asks about earlier versions of its files. */
export function answerReviewRequests(connection: Connection, workshop: Workshop, versions: Versions | undefined): void {
    connection.onRequest(method.compare, async (params: CompareParams, token: CancellationToken): Promise<unknown> => {
        try {
            return await compare(workshop, versions, params, token);
        } catch (error) {
            if (error instanceof Cancelled) return null;
            throw error;
        }
    });
    connection.onRequest(method.revisions, async ({ uri }: { uri: string }): Promise<unknown> => {
        const found = await (versions?.choices(uri) ?? noVersions);
        const answer: RevisionsAnswer = 'problem' in found ? found : { revisions: found };
        return answer;
    });
}

const noVersions: NoVersion = {
    problem: 'Earlier versions are read by git, which an editor that is only a browser does not have.',
};

/** The text as the editor has it now, saved or not, beside what it is to be compared with. */
async function compare(
    workshop: Workshop,
    versions: Versions | undefined,
    params: CompareParams,
    token: CancellationToken,
): Promise<PageAnswer | null> {
    const document = await workshop.linked(params.uri, token);
    if (document === undefined) return { problem: 'This file is not read as a recipe file: open it, or a folder that holds it.' };
    const before = await earlier(workshop, versions, params, token);
    if (token.isCancellationRequested) return null;
    if ('problem' in before) return before;
    const name = nameOf(document);
    const after = here(workshop, document, name, before.name === name ? `${name} in the editor` : name);
    const reviews = await reviewJobs(before.version, after, { before: before.name, after: name }, { pictures: true });
    if (token.isCancellationRequested) return null;
    if (reviews.length === 0) return { problem: 'There is no recipe on either side.' };
    const body = await workshop.ask({ do: 'review-page', reviews }, `compare ${document.uri.toString()}`, {
        onCancel: (giveUp) => token.onCancellationRequested(giveUp),
    });
    return { title: name, body };
}

async function earlier(
    workshop: Workshop,
    versions: Versions | undefined,
    { uri, before, revision = 'HEAD' }: CompareParams,
    token: CancellationToken,
): Promise<OpenedFile | NoVersion> {
    if (before === undefined) return versions === undefined ? noVersions : versions.open(uri, revision);
    const document = await workshop.linked(before, token);
    if (document === undefined) return { problem: 'The other file is not read as a recipe file.' };
    const name = nameOf(document);
    return { version: here(workshop, document, name, name), name };
}

function here(workshop: Workshop, document: LangiumDocument, name: string, label: string): OpenVersion {
    return { workshop, documents: new Map([[name, document]]), label: () => label };
}

function nameOf({ uri }: LangiumDocument): string {
    return uri.path.slice(uri.path.lastIndexOf('/') + 1);
}
