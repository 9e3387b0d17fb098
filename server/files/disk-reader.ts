import { constants } from 'node:fs';
import { open } from 'node:fs/promises';
import { type FileReader, largestArt, type ReadResult } from './read-result';
import type { WorkspaceFiles } from './workspace-files';

/** Without waiting for a writer, if what is opened turns out to be a pipe; Windows has no such flag. */
const atOnce = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

/** Reads art from disk, only inside the workspace's roots, never more than the limit. */
export function diskReader(files: WorkspaceFiles): FileReader {
    return async (uri): Promise<ReadResult> => {
        const place = await files.resolve(uri);
        if ('problem' in place) return { ...place, version: place.problem };
        try {
            const handle = await open(place.path, atOnce);
            try {
                const status = await handle.stat();
                if (!status.isFile()) return { problem: 'unreadable', version: 'not a file' };
                const version = `${status.mtimeMs} ${status.size} ${status.ino}`;
                if (status.size > largestArt) return { problem: 'too-large', version };
                return { bytes: new Uint8Array(await handle.readFile()), version };
            } finally {
                await handle.close();
            }
        } catch {
            return { problem: 'unreadable', version: 'unreadable' };
        }
    };
}
