import * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { activateWith } from './activate';
import { offerToAssistants } from './assistants';
import { RecipeServer } from './server';
import { offerCommandLine } from './terminal';

/** In an editor with Node: the server is a process of its own, run by the editor's Node. */
export function activate(context: vscode.ExtensionContext): Promise<void> {
    offerCommandLine(context);
    offerToAssistants(context);
    const module = vscode.Uri.joinPath(context.extensionUri, 'dist', 'server.cjs').fsPath;
    // The second is explained in server/serve-node.ts, the third in server/let-old-trees-go.ts.
    const execArgv = ['--enable-source-maps', '--no-allocation-site-pretenuring', '--expose-gc'];
    const run = { module, transport: TransportKind.ipc, options: { execArgv } };
    return activateWith(new RecipeServer((options) => new LanguageClient('kerfbook', 'Kerfbook', run, options)), context);
}
