import type { CancellationToken, Connection } from 'vscode-languageserver';
import { runEdits } from '../language/run-edits';
import { method, type RunParams, type WrittenAnswer } from '../shared/view/protocol';
import type { Workshop } from './workshop/workshop';

/** Answers what the editor asks to write a finished run down. */
export function answerRunRequests(connection: Connection, workshop: Workshop): void {
    connection.onRequest(method.run, async (params: RunParams, token: CancellationToken): Promise<unknown> => {
        const document = await workshop.linked(params.uri, token);
        if (document === undefined) return null;
        if (workshop.recipe(document, params.recipe)?.name !== params.recipe) {
            return { problem: `There is no recipe called “${params.recipe}” in this file any more.` };
        }
        const edits = runEdits(document, params, workshop.services);
        if (edits === undefined) return { problem: 'What was ticked off cannot be written as a run of this recipe.' };
        const answer: WrittenAnswer = { uri: document.uri.toString(), version: document.textDocument.version, edits };
        return answer;
    });
}
