import * as vscode from 'vscode';
import { method } from '../shared/view/protocol';
import type { RecipeServer } from './server';

/** Built-in stock has no file: its text comes from the server, so that a definition in it can be opened and read. */
export function offerStock(server: RecipeServer): vscode.Disposable {
    return vscode.workspace.registerTextDocumentContentProvider('kerfbook-stock', {
        provideTextDocumentContent: (uri, token) => server.ask<string>(method.stock, { uri: uri.toString() }, token),
    });
}
