import { type FileSystemProvider, type URI, UriUtils } from 'langium';
import type { Connection } from 'vscode-languageserver';
import { fromBase64 } from '../../shared/quantity/base64';
import type { ListAnswer, ReadAnswer } from '../../shared/view/protocol';
import { editorRequests } from '../../shared/view/requests';
import type { FileReader, ReadResult } from './read-result';
import { skippedFolders } from './skipped-folders';

const nothing: ListAnswer = { entries: [] };

/** Reads through the editor, where there is no disk: the editor decides what lies in the workspace. */
export function clientReader(connection: Connection): FileReader {
    return async (uri): Promise<ReadResult> => {
        try {
            const answer = await connection.sendRequest<ReadAnswer>(editorRequests.read.method, { uri });
            if ('problem' in answer) return { problem: answer.problem, version: answer.problem };
            const bytes = fromBase64(answer.base64);
            return { bytes, version: `${bytes.length} ${hash(bytes)}` };
        } catch {
            return { problem: 'unreadable', version: 'unreadable' };
        }
    };
}

/** FNV-1a, 32 bits: enough to tell one version of a file from the next. */
function hash(bytes: Uint8Array): number {
    let sum = 0x811c9dc5;
    for (const byte of bytes) sum = Math.imul(sum ^ byte, 0x01000193);
    return sum >>> 0;
}

/** The file system that the language sees in a browser: what the editor hands over of the workspace's folders. */
export function clientFileSystem(connection: Connection): { fileSystemProvider: () => FileSystemProvider } {
    const read = clientReader(connection);
    const readBinary = async (uri: URI): Promise<Uint8Array> => {
        const result = await read(uri.toString());
        if ('problem' in result) throw new Error(`${uri.toString()} is ${result.problem}`);
        return result.bytes;
    };
    const synchronous = (): never => {
        throw new Error('Recipes are read asynchronously.');
    };
    return {
        fileSystemProvider: () => ({
            readFile: async (uri) => new TextDecoder().decode(await readBinary(uri)),
            readBinary,
            readDirectory: async (uri) => {
                const { entries } = await connection
                    .sendRequest<ListAnswer>(editorRequests.list.method, { uri: uri.toString() })
                    .catch(() => nothing);
                return entries
                    .filter(({ name, kind }) => kind === 'file' || !skippedFolders.has(name))
                    .map(({ name, kind }) => ({
                        isFile: kind === 'file',
                        isDirectory: kind === 'folder',
                        uri: UriUtils.joinPath(uri, name),
                    }));
            },
            exists: async (uri) => !('problem' in (await read(uri.toString()))),
            stat: async (uri) => ({ isFile: true, isDirectory: false, uri }),
            readFileSync: synchronous,
            readBinarySync: synchronous,
            readDirectorySync: synchronous,
            existsSync: () => false,
            statSync: synchronous,
        }),
    };
}
