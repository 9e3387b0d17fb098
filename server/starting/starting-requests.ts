import { type LangiumDocument, URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { isBuiltIn } from '../../language/built-in';
import { choicesOf } from '../../language/starting/shop-here';
import { requests } from '../../shared/view/requests';
import type { Asker } from '../engine/asker';
import { onRequest } from '../protocol/on-request';
import { openWorkshop, type Source } from '../workshop/open-workshop';
import type { Workshop } from '../workshop/workshop';
import { newRecipe, type Shop } from './new-recipe';
import { withNewFiles } from './with-new-files';

/** Answers what the editor asks to begin a new recipe. What is tried out for it never shows among the open files. */
export function answerStartingRequests(connection: Connection, workshop: Workshop, source: Source, asker: Asker): void {
    const { LangiumDocuments } = workshop.services.shared.workspace;
    const shopOf = async (files: readonly string[]): Promise<Shop> => {
        // As they stand in the editor, saved or not.
        const live = LangiumDocuments.all.filter(({ uri }) => !isBuiltIn(uri.toString())).toArray();
        const texts = new Map(
            live.map((document: LangiumDocument) => [document.uri.toString(), document.textDocument.getText()]),
        );
        const changed = withNewFiles(source, texts, new Map());
        const uris = new Set([...texts.keys(), ...files.map((file) => URI.parse(file).toString())]);
        const opened = await openWorkshop(changed, [...uris], undefined, asker);
        const documents = opened.workshop.services.shared.workspace.LangiumDocuments.all.toArray();
        return { workshop: opened.workshop, documents, source: changed, asker };
    };
    onRequest(connection, requests.newRecipeChoices, async ({ files }) => {
        return choicesOf((await shopOf(files)).documents);
    });
    onRequest(connection, requests.newRecipe, async (params) => {
        return newRecipe(params, await shopOf(params.files));
    });
}
