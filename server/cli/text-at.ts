import { pathToFileURL } from 'node:url';
import { asynchronousOnly } from '../files/asynchronous-only';
import type { Source } from '../workshop/open-workshop';

/** The same files, but for one address, at which this text is read. */
export function withTextAt<Files extends Source>(source: Files, uri: string, text: string): Files {
    const disk = source.fileSystem.fileSystemProvider();
    return {
        ...source,
        fileSystem: asynchronousOnly({
            readFile: async (asked) =>
                asked.toString() === uri || pathToFileURL(asked.fsPath).toString() === uri ? text : disk.readFile(asked),
            readBinary: (asked) => disk.readBinary(asked),
            readDirectory: (asked) => disk.readDirectory(asked),
            exists: (asked) => disk.exists(asked),
            stat: (asked) => disk.stat(asked),
        }),
    };
}
