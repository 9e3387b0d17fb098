import { URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { insertArt } from '../language/editing/insert-art';
import { phrase } from '../shared/recipe/phrase';
import { requests } from '../shared/view/requests';
import { onRequest } from './protocol/on-request';
import type { Workshop } from './workshop/workshop';

/** Answers what the editor asks when art is dropped on a recipe or pasted into it. */
export function answerArtRequests(connection: Connection, workshop: Workshop): void {
    onRequest(connection, requests.insertArt, async (params, token) => {
        const document = await workshop.linked(params.uri, token);
        if (document === undefined) return null;
        const edits = insertArt(
            document,
            params.offset,
            params.files.map((file) => URI.parse(file)),
            workshop.services,
        );
        if (edits === undefined) return { problem: phrase`There is no recipe in this file that the art could be for.` };
        return { uri: document.uri.toString(), version: document.textDocument.version, edits };
    });
}
