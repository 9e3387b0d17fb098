import { fromBase64 } from '../../shared/quantity/base64';
import { phrase } from '../../shared/recipe/phrase';
import { safePath } from '../../shared/sheets/safe-path';
import type { NewFile } from '../../shared/view/new-recipe';
import { CannotWrite } from './cannot-write';
import type { Store } from './store';

/** Writes files that are not there yet, all or none. @throws CannotWrite where one is there already, whatever it is */
export async function writeNew(store: Store, files: readonly NewFile[]): Promise<void> {
    const puts = new Map<string, Uint8Array>();
    for (const file of files) {
        if (safePath(file.path) === undefined)
            throw new CannotWrite(phrase`“${file.path}” cannot be the name of a file. Call the recipe otherwise.`);
        if ((await store.look(file.path)).kind !== 'missing')
            throw new CannotWrite(phrase`${file.path} is there already, and nothing was written. Choose another name or folder.`);
        puts.set(file.path, 'text' in file ? new TextEncoder().encode(file.text) : fromBase64(file.base64));
    }
    await store.replace(puts);
}
