import { stat } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { WatchedPlace } from '../../shared/view/protocol';
import type { Repository } from './repository';

/**
 * Where it shows that HEAD, a branch or a tag has come to stand elsewhere (gitrepository-layout(5)). A work tree of
 * its own has its own HEAD and the branches of all; newer repositories keep both in tables.
 */
export async function revisionPlaces(repository: Repository): Promise<WatchedPlace[]> {
    const { own, common } = await repository.stores();
    const stores = [...new Set([own, common])];
    const places = [
        ...stores.map((folder) => ({ folder, pattern: '{HEAD,packed-refs}' })),
        { folder: path.join(common, 'refs'), pattern: '**' },
        ...stores.map((folder) => ({ folder: path.join(folder, 'reftable'), pattern: '*' })),
    ];
    const there = await Promise.all(places.map(({ folder }) => isFolder(folder)));
    return places
        .filter((_, index) => there[index])
        .map(({ folder, pattern }) => ({ folder: pathToFileURL(folder).toString(), pattern }));
}

async function isFolder(name: string): Promise<boolean> {
    return (await stat(name).catch(() => undefined))?.isDirectory() === true;
}
