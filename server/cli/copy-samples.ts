import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import type { NewFile } from '../../shared/view/new-recipe';
import { realFolder } from '../files/real-folder';
import { DiskStore } from '../writing/disk-store';
import { writeNew } from '../writing/write-new';
import { sayLine } from './say';
import { UsageError } from './usage-error';

/**
 * `kerfbook new --samples`: the sample workshop that comes along, into a folder that holds nothing of these names yet.
 * @param program the folder of this program; the samples lie beside it, in the repository as in the package
 * @throws UsageError where they do not
 * @throws CannotWrite where a file of one of these names is there already; then nothing is written
 */
export async function copySamples(folder: string, program: string): Promise<void> {
    const files = await samplesBeside(program);
    await writeNew(new DiskStore(folder, await Promise.all([process.cwd(), folder].map(realFolder))), files);
    for (const file of files) sayLine(path.relative('.', path.join(folder, ...file.path.split('/'))));
}

async function samplesBeside(program: string): Promise<NewFile[]> {
    const home = path.join(program, '..', 'samples');
    const entries = await readdir(home, { recursive: true, withFileTypes: true }).catch(() => []);
    const files = entries.filter((entry) => entry.isFile()).map((entry) => path.join(entry.parentPath, entry.name));
    if (files.length === 0) throw new UsageError(`There are no samples in ${home}: this copy of Kerfbook came without them.`);
    return Promise.all(
        files.sort().map(async (file) => ({
            path: path.relative(home, file).split(path.sep).join('/'),
            base64: (await readFile(file)).toString('base64'),
        })),
    );
}
