import { readdir } from 'node:fs/promises';
import path from 'node:path';

/** Folders that never hold recipes and are slow to walk. */
const skipped = new Set(['node_modules', '.git', 'made']);

/** Every recipe file below a folder, in a stable order. Links are not followed. */
export async function recipeFilesIn(folder: string): Promise<string[]> {
    const entries = await readdir(folder, { withFileTypes: true });
    const found: string[] = [];
    for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
        const full = path.join(folder, entry.name);
        if (entry.isDirectory() && !skipped.has(entry.name)) found.push(...(await recipeFilesIn(full)));
        else if (entry.isFile() && entry.name.endsWith('.kerf')) found.push(full);
    }
    return found;
}
