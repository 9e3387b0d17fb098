import { safePath } from './safe-path';

/** What was written into a folder: whose it is and the hash of each file, so that what people changed since is known. */
export interface Manifest {
    /** Of what the files are, such as `recipe heron-tray`. */
    readonly of: string;
    /** The file that it stands in, as a path from the folder. */
    readonly from: string;
    /** Hash of each file as it was written, by its path in the folder. */
    readonly hashes: ReadonlyMap<string, string>;
}

/** Name of the manifest's own file. */
export const manifestName = 'written.json';

const schema = 1;
const what = 'Kerfbook wrote these files. By their hashes it tells what was changed by hand since, and keeps it.';

export function printManifest({ of, from, hashes }: Manifest): string {
    const files = Object.fromEntries([...hashes].toSorted(([a], [b]) => (a < b ? -1 : 1)));
    return `${JSON.stringify({ schema, what, of, from, files }, null, 2)}\n`;
}

/** Undefined for what is no manifest. A path that would leave the folder is left out, since anybody may have written it. */
export function readManifest(text: string): Manifest | undefined {
    let value: unknown;
    try {
        value = JSON.parse(text);
    } catch {
        return undefined;
    }
    if (typeof value !== 'object' || value === null) return undefined;
    const { schema: version, of, from, files } = value as Record<string, unknown>;
    if (version !== schema || typeof of !== 'string' || typeof from !== 'string') return undefined;
    if (typeof files !== 'object' || files === null) return undefined;
    const hashes = Object.entries(files).filter(
        ([path, hash]) => safePath(path) !== undefined && typeof hash === 'string' && /^[0-9a-f]{64}$/.test(hash),
    );
    return { of, from, hashes: new Map(hashes) };
}
