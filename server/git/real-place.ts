import { realpath } from 'node:fs/promises';
import path from 'node:path';

/** Where a file really lies, whether it is there or not: links in the folders above are followed, the file's own is not. */
export async function realPlace(file: string): Promise<string> {
    const full = path.resolve(file);
    const folder = path.dirname(full);
    if (folder === full) return full;
    const real = await realpath(folder).catch(() => undefined);
    return path.join(real ?? (await realPlace(folder)), path.basename(full));
}
