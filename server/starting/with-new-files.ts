import { type FileSystemProvider, URI } from 'langium';
import { asynchronousOnly } from '../files/asynchronous-only';
import type { Source } from '../workshop/open-workshop';

/** The same files, with some that are not there yet or stand otherwise in an editor. By their addresses. */
export function withNewFiles(
    { fileSystem, read }: Source,
    texts: ReadonlyMap<string, string>,
    bytes: ReadonlyMap<string, Uint8Array>,
): Source {
    const below: FileSystemProvider = fileSystem.fileSystemProvider();
    const textOf = (uri: URI): string | undefined => texts.get(uri.toString());
    return {
        fileSystem: asynchronousOnly({
            readFile: async (uri) => textOf(uri) ?? below.readFile(uri),
            readBinary: async (uri) => {
                const text = textOf(uri);
                return text === undefined ? below.readBinary(uri) : new TextEncoder().encode(text);
            },
            readDirectory: (uri) => below.readDirectory(uri),
            exists: async (uri) => textOf(uri) !== undefined || below.exists(uri),
            stat: async (uri) => (textOf(uri) === undefined ? below.stat(uri) : { isFile: true, isDirectory: false, uri }),
        }),
        read: async (uri) => {
            const own = bytes.get(URI.parse(uri).toString());
            return own === undefined ? read(uri) : { bytes: own, version: `new ${own.length}` };
        },
    };
}
