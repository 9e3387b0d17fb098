import { type LangiumDocument, URI, UriUtils } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { isBuiltIn } from '../language/built-in';
import type { CheckedFile } from '../shared/view/protocol';
import { requests } from '../shared/view/requests';
import { failingOnErrors, failingOnWarnings, fails } from './cli/formats/check-report';
import { textReport } from './cli/formats/text';
import { onRequest } from './protocol/on-request';
import { notesOf } from './report/notes-of';
import { inAllFiles, type Naming, type PlacedFinding, placedFindings } from './report/placed-finding';
import type { Workshop } from './workshop/workshop';

/** Answers what an editor's task asks: the same report that the command line gives, of the files as they stand in the editor. */
export function answerCheckRequests(connection: Connection, workshop: Workshop): void {
    onRequest(connection, requests.check, async ({ folder, files: known = [], strict = false }) => {
        const top = URI.parse(folder);
        const naming: Naming = ({ uri }) => (isBuiltIn(uri.toString()) ? uri.toString() : UriUtils.relative(top, uri));
        await readUnread(known, workshop);
        const documents = await recipeFilesBelow(top, workshop);
        const all: PlacedFinding[][] = [];
        const files: CheckedFile[] = [];
        for (const document of documents) {
            const found = await placedFindings(workshop, document, naming);
            all.push(found);
            files.push({
                uri: document.uri.toString(),
                path: naming(document),
                recipes: workshop.recipes(document).map(({ name }) => name),
                errors: found.filter(({ finding }) => finding.severity === 'error').length,
            });
        }
        const failing = strict ? failingOnWarnings : failingOnErrors;
        const findings = inAllFiles(all);
        const told = await Promise.all(documents.map((document) => notesOf(workshop, document, naming)));
        const [notes, silenced] = [told.flatMap((each) => each.notes), told.flatMap((each) => each.silenced)];
        const report = textReport({ files: files.map(({ path }) => path), findings, silenced, notes, failing, root: folder });
        return { report, failed: findings.some(({ finding }) => fails(finding, failing)), files };
    });
}

/** In a browser only what is open or used is known by itself. */
async function readUnread(uris: readonly string[], { services }: Workshop): Promise<void> {
    const { LangiumDocuments, DocumentBuilder, WorkspaceLock } = services.shared.workspace;
    const unread = uris.map((uri) => URI.parse(uri)).filter((uri) => !LangiumDocuments.hasDocument(uri));
    if (unread.length === 0) return;
    await WorkspaceLock.write(async (token) => {
        const read = await Promise.all(unread.map((uri) => LangiumDocuments.getOrCreateDocument(uri).catch(() => undefined)));
        await DocumentBuilder.build(
            read.filter((document) => document !== undefined),
            {},
            token,
        );
    });
}

async function recipeFilesBelow(top: URI, workshop: Workshop): Promise<LangiumDocument[]> {
    const { LangiumDocuments } = workshop.services.shared.workspace;
    const below = `${top.toString().replace(/\/$/, '')}/`;
    const uris = LangiumDocuments.all
        .map(({ uri }) => uri.toString())
        .filter((uri) => uri.startsWith(below) && !isBuiltIn(uri) && !/\/(node_modules|\.git|made)\//.test(uri))
        .toArray()
        .sort();
    return (await Promise.all(uris.map((uri) => workshop.linked(uri)))).filter((document) => document !== undefined);
}
