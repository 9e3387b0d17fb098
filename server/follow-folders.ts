import { fileURLToPath } from 'node:url';
import { URI } from 'langium';
import { type Connection, FileChangeType, type FileEvent, type WorkspaceFolder } from 'vscode-languageserver';
import type { WorkspaceFiles } from './files/workspace-files';
import type { Workshop } from './workshop/workshop';

/** Reads what lies in the workspace's folders, also in those that are added later, and forgets what lies in one that is taken out. */
export function followFolders(connection: Connection, { services, arts }: Workshop, files: WorkspaceFiles): void {
    const { shared } = services;
    const folders = new Set<string>();
    let tellsOfFolders = false;
    const { TextDocuments, WorkspaceManager, LangiumDocuments } = shared.workspace;
    const setRoots = async (): Promise<void> => {
        await files.setRoots([...folders].flatMap((uri) => pathOf(uri) ?? []));
        for (const { uri } of TextDocuments.all()) await files.admit(uri);
    };
    TextDocuments.onDidOpen(({ document }) => void files.admit(document.uri));
    shared.lsp.LanguageServer.onInitialize((params) => {
        const first = params.workspaceFolders ?? (params.rootUri ? [{ uri: params.rootUri, name: '' }] : []);
        for (const { uri } of first) folders.add(uri);
        void setRoots();
        tellsOfFolders = params.capabilities.workspace?.workspaceFolders === true;
    });
    shared.lsp.LanguageServer.onInitialized((params) => {
        if (params === undefined || !tellsOfFolders) return;
        connection.workspace.onDidChangeWorkspaceFolders(async ({ added, removed }) => {
            for (const { uri } of removed) folders.delete(uri);
            for (const { uri } of added) folders.add(uri);
            await setRoots();
            const come = await Promise.all(added.map(({ uri }) => WorkspaceManager.searchFolder(URI.parse(uri))));
            const gone = LangiumDocuments.all
                .map(({ uri }) => uri.toString())
                .filter(
                    (uri) =>
                        isIn(uri, removed) &&
                        !isIn(
                            uri,
                            [...folders].map((folder) => ({ uri: folder, name: '' })),
                        ),
                )
                .filter((uri) => TextDocuments.get(uri) === undefined)
                .toArray();
            const unread = await arts.unread();
            const changes: FileEvent[] = [
                ...come.flat().map((uri): FileEvent => ({ uri: uri.toString(), type: FileChangeType.Created })),
                // What lay outside may lie inside now.
                ...unread.map((uri): FileEvent => ({ uri, type: FileChangeType.Changed })),
                ...gone.map((uri): FileEvent => ({ uri, type: FileChangeType.Deleted })),
            ];
            shared.lsp.DocumentUpdateHandler?.didChangeWatchedFiles?.({ changes });
        });
    });
}

function isIn(uri: string, folders: readonly WorkspaceFolder[]): boolean {
    return folders.some((folder) => uri.startsWith(`${folder.uri.replace(/\/$/, '')}/`));
}

function pathOf(uri: string): string | undefined {
    try {
        return fileURLToPath(uri);
    } catch {
        return undefined;
    }
}
