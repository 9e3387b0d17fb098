import type { Connection } from 'vscode-languageserver';
import { runEdits } from '../language/run-edits';
import { requests } from '../shared/view/requests';
import { onRequest } from './protocol/on-request';
import type { Workshop } from './workshop/workshop';

/** Answers what the editor asks to write a finished run down. */
export function answerRunRequests(connection: Connection, workshop: Workshop): void {
    onRequest(connection, requests.run, async (params, token) => {
        const document = await workshop.linked(params.uri, token);
        if (document === undefined) return null;
        if (workshop.recipe(document, params.recipe)?.name !== params.recipe) {
            return { problem: `There is no recipe called “${params.recipe}” in this file any more.` };
        }
        const edits = runEdits(document, params, workshop.services);
        if (edits === undefined) return { problem: 'What was ticked off cannot be written as a run of this recipe.' };
        return { uri: document.uri.toString(), version: document.textDocument.version, edits };
    });
}
