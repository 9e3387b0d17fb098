import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { type Asker, LocalAsker } from '../engine/asker';

/** A worker takes about as long to start as this many recipes to be worked out. */
const FEW = 32;

/** Files that are asked about at a time: each core has one under way and one that waits. */
export const AT_ONCE = 2 * availableParallelism();

/** Who works out so many files: this thread for a few, every core for many. */
export async function askerFor(files: number): Promise<Asker> {
    const worker = path.join(__dirname, 'worker.cjs');
    const cores = availableParallelism();
    if (files < FEW || cores < 2 || !existsSync(worker)) return new LocalAsker();
    const { CoresAsker } = await import('../engine/cores-asker');
    return new CoresAsker(worker, cores);
}
