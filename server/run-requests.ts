import type { URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { runEdits, runFile, takenRun } from '../language/run-edits';
import { type Message, phrase } from '../shared/recipe/phrase';
import { requests } from '../shared/view/requests';
import { onRequest } from './protocol/on-request';
import type { Workshop } from './workshop/workshop';
import { CannotWrite } from './writing/cannot-write';
import type { OpenStore } from './writing/store';
import { takeRun, writeRun } from './writing/write-run';

const unreadableRun = () => phrase`What was ticked off cannot be written as a run of this recipe.`;

function noRecipe(name: string): Message {
    return phrase`There is no recipe called “${name}” in this file any more.`;
}

/** Answers what the editor asks to write a finished run down. */
export function answerRunRequests(connection: Connection, workshop: Workshop, openStore: OpenStore): void {
    onRequest(connection, requests.run, async (params, token) => {
        const document = await workshop.linked(params.uri, token);
        if (document === undefined) return null;
        if (workshop.recipe(document, params.recipe) === undefined) {
            return { problem: noRecipe(params.recipe) };
        }
        const edits = runEdits(document, params, workshop.services);
        if (edits === undefined) return { problem: unreadableRun() };
        return { uri: document.uri.toString(), version: document.textDocument.version, edits };
    });
    // Asked only where the maker trusts the workspace.
    onRequest(connection, requests.writeRun, async (params, token) => {
        const document = await workshop.linked(params.uri, token);
        if (document === undefined) return null;
        if (workshop.recipe(document, params.recipe) === undefined) return { problem: noRecipe(params.recipe) };
        try {
            const textAt = (place: URI): string | undefined => runFile(document, place, params, workshop.services);
            return (await writeRun(document, params, openStore, textAt)) ?? { problem: unreadableRun() };
        } catch (error) {
            if (error instanceof CannotWrite) return { problem: error.message };
            throw error;
        }
    });
    onRequest(connection, requests.takeRun, async ({ uri, recipe, name, text }, token) => {
        const document = await workshop.linked(uri, token);
        if (document === undefined) return null;
        if (workshop.recipe(document, recipe) === undefined) return { problem: noRecipe(recipe) };
        let of: string | undefined;
        const textAt = (place: URI): string | undefined => {
            const taken = takenRun(document, place, text, recipe, workshop.services);
            if (taken !== undefined && 'of' in taken) of = taken.of;
            return taken !== undefined && 'text' in taken ? taken.text : undefined;
        };
        try {
            const written = await takeRun(document, name, openStore, textAt);
            if (written !== undefined) return written;
        } catch (error) {
            if (error instanceof CannotWrite) return { problem: error.message };
            throw error;
        }
        if (of !== undefined)
            return {
                problem: phrase`${name} is a run of “${of}”, not of “${recipe}”. Put the cursor into that recipe and take it in again.`,
            };
        return { problem: phrase`${name} holds something else than one run as the page for the tablet writes it.` };
    });
}
