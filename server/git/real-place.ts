import path from 'node:path';
import { realFolder } from '../files/real-folder';

/** Where a file really lies, whether it is there or not: links in the folders above are followed, the file's own is not. */
export async function realPlace(file: string): Promise<string> {
    const full = path.resolve(file);
    const folder = path.dirname(full);
    return folder === full ? full : path.join(await realFolder(folder), path.basename(full));
}
