import { realpath } from 'node:fs/promises';
import path from 'node:path';

/** Where a folder really lies, be it there or not: links are followed as far as there is something. */
export async function realFolder(folder: string): Promise<string> {
    const full = path.resolve(folder);
    const real = await realpath(full).catch(() => undefined);
    if (real !== undefined) return real;
    const above = path.dirname(full);
    return above === full ? full : path.join(await realFolder(above), path.basename(full));
}

/** Whether a path is a folder or lies below it, by their names alone. */
export function lies(file: string, folder: string): boolean {
    const relative = path.relative(folder, file);
    return relative === '' || (!relative.startsWith(`..${path.sep}`) && relative !== '..' && !path.isAbsolute(relative));
}

export function isMissing(error: unknown): boolean {
    return error instanceof Error && 'code' in error && (error.code === 'ENOENT' || error.code === 'ENOTDIR');
}
