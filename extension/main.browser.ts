import * as vscode from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from 'vscode-languageclient/browser';
import { activateWith } from './activate';
import { RecipeServer } from './server';

/** In an editor that is only a browser: the server is a web worker. */
export function activate(context: vscode.ExtensionContext): Promise<void> {
    const script = vscode.Uri.joinPath(context.extensionUri, 'dist', 'server.web.js').toString(true);
    // A new worker at each start, so that the server can be restarted.
    const run = async () => {
        const worker = new Worker(script);
        return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
    };
    return activateWith(new RecipeServer((options) => new LanguageClient('kerfbook', 'Kerfbook', run, options)), context);
}
