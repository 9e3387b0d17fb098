import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Connection } from 'vscode-languageserver';
import { byContent } from './files/content-version';
import { diskReader } from './files/disk-reader';
import { guardedFileSystem } from './files/guarded-file-system';
import { WorkspaceFiles } from './files/workspace-files';
import { GitVersions } from './git/git-versions';
import { serveLanguage } from './language-server';
import { nodePort } from './worker/node-port';
import { PlanQueue } from './worker/plan-queue';

/** The language server on disk files, with its geometry in a worker thread. */
export function serveNode(connection: Connection, workerFile: string): void {
    const files = new WorkspaceFiles();
    const asker = new PlanQueue((died) => nodePort(workerFile, died));
    const workshop = serveLanguage({
        connection,
        fileSystem: guardedFileSystem(files),
        // By content, so that art is the same thing in every version in which it is.
        read: byContent(diskReader(files)),
        asker,
        versions: new GitVersions(files, asker),
    });
    const { shared } = workshop.services;
    shared.lsp.LanguageServer.onInitialize((params) => {
        const folders = params.workspaceFolders ?? (params.rootUri ? [{ uri: params.rootUri, name: '' }] : []);
        void files.setRoots(folders.flatMap(({ uri }) => pathOf(uri) ?? []));
    });
    // A recipe that was opened on its own may read what lies beside it.
    shared.workspace.TextDocuments.onDidOpen(({ document }) => {
        const file = pathOf(document.uri);
        if (file === undefined) return;
        void files.resolve(document.uri).then((place) => ('problem' in place ? files.addRoot(path.dirname(file)) : undefined));
    });
}

function pathOf(uri: string): string | undefined {
    try {
        return fileURLToPath(uri);
    } catch {
        return undefined;
    }
}
