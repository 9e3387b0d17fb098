import * as vscode from 'vscode';
import { requests } from '../shared/view/requests';
import type { RecipeServer } from './server';

/** Built-in stock has no file: its text comes from the server, so that a definition in it can be opened and read. */
export function offerStock(server: RecipeServer): vscode.Disposable {
    return vscode.workspace.registerTextDocumentContentProvider('kerfbook-stock', {
        provideTextDocumentContent: (uri, token) => server.ask(requests.stock, { uri: uri.toString() }, token),
    });
}
