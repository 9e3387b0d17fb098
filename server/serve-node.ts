import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import type { Connection } from 'vscode-languageserver';
import { ClientStore } from './files/client-store';
import { byContent } from './files/content-version';
import { diskReader } from './files/disk-reader';
import { guardedFileSystem } from './files/guarded-file-system';
import { WorkspaceFiles } from './files/workspace-files';
import { followFolders } from './follow-folders';
import { GitVersions } from './git/git-versions';
import { serveLanguage } from './language-server';
import { letOldTreesGo } from './let-old-trees-go';
import { nodePort } from './worker/node-port';
import { PlanQueue } from './worker/plan-queue';
import { DiskStore } from './writing/disk-store';

/** The language server on disk files, with its geometry in a worker thread. */
export function serveNode(connection: Connection, workerFile: string): void {
    treesAreShortLived();
    const files = new WorkspaceFiles();
    const manual = path.join(path.dirname(workerFile), '..', 'extension', 'docs');
    const asker = new PlanQueue((died) => nodePort(workerFile, died));
    const workshop = serveLanguage({
        connection,
        fileSystem: guardedFileSystem(files),
        // By content, so that art is the same thing in every version in which it is.
        read: byContent(diskReader(files)),
        asker,
        // What lies on a file system of the editor's own, only the editor can write.
        openStore: (folder) =>
            folder.startsWith('file:')
                ? new DiskStore(fileURLToPath(folder), files.folders)
                : new ClientStore(connection, folder),
        versions: new GitVersions(files, asker),
        ...(existsSync(manual) && { manual: pathToFileURL(manual).toString() }),
    });
    followFolders(connection, workshop, files);
    letOldTreesGo(workshop.services.shared.workspace.DocumentBuilder);
}

/**
 * A text's tree lives until the next key is pressed. The engine, seeing most of a tree survive while it grows, would begin to make
 * its nodes among what lives long; and since all nodes hang together, one of them then keeps its whole tree until a full
 * collection, and every small collection copies all the trees since. The Node inside a desktop editor may have closed its flags
 * by now: there the extension says it as the server is started.
 */
function treesAreShortLived(): void {
    if (process.versions.electron === undefined) setFlagsFromString('--no-allocation-site-pretenuring');
}
