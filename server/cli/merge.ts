import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { EmptyFileSystem } from 'langium';
import { mergeTexts } from '../../language/merging/merge-texts';
import { createKerfServices } from '../../language/module';
import { realFolder } from '../files/real-folder';
import { mergeLines } from '../git/merge-lines';
import { DiskStore } from '../writing/disk-store';
import { complain } from './say';
import { readArgs } from './usage/read-args';
import { mergeUsage } from './usage/usages';
import { UsageError } from './usage-error';

/** Above it git takes a driver's answer for a failure and stops its merge, with nothing changed (gitattributes(5)). */
const failed = 129;
const names = { ours: 'ours', theirs: 'theirs' };

interface Files {
    readonly base: string;
    readonly ours: string;
    readonly theirs: string;
}

/**
 * `kerfbook merge BASE OURS THEIRS`: git's merge driver for recipes. OURS becomes the merge, which it does whole or not at all.
 * Exit code as git wants it: 0 merged, the number of conflicts up to 127, above that it could not be done.
 */
export async function merge(args: string[]): Promise<number> {
    try {
        return await mergeFiles(args);
    } catch (error) {
        // Any smaller code would have git take OURS as it stands for a merge with conflicts, and the other side would be lost.
        complain(`The recipes were not merged: ${error instanceof Error ? error.message : String(error)}`);
        return failed;
    }
}

async function mergeFiles(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(mergeUsage, args);
    const [base, ours, theirs] = positionals;
    const size = Number(values['marker-size']);
    if (base === undefined || ours === undefined || theirs === undefined || positionals.length > 3)
        throw new UsageError('Name three files: the common version, ours and theirs.');
    if (!Number.isInteger(size) || size < 1 || size > 100) throw new UsageError('--marker-size is a whole number from 1 to 100.');
    const [folder, name] = [path.dirname(path.resolve(ours)), values.path ?? ours];
    const merged = (await mergedAsRecipes({ base, ours, theirs }, size)) ?? (await mergedAsLines({ base, ours, theirs }, size));
    if (merged === undefined) {
        // As git itself does with what is no text: ours stays, and a person decides.
        complain(`${name} is no text, so that it cannot be merged: ours is kept. Choose one of the two.`);
        return 1;
    }
    const store = new DiskStore(folder, [await realFolder(folder)]);
    await store.replace(new Map([[path.basename(ours), merged.bytes]]));
    return Math.min(merged.conflicts, 127);
}

type Merged = { readonly bytes: Uint8Array; readonly conflicts: number };

async function mergedAsRecipes(files: Files, size: number): Promise<Merged | undefined> {
    const [base, ours, theirs] = await Promise.all([files.base, files.ours, files.theirs].map(readText));
    if (base === undefined || ours === undefined || theirs === undefined) return undefined;
    const { kerf } = createKerfServices(EmptyFileSystem);
    const merged = mergeTexts({ base: base.text, ours: ours.text, theirs: theirs.text }, { size, ...names }, kerf);
    if (merged === undefined) return undefined;
    const hasMark = ours.hasMark === base.hasMark ? theirs.hasMark : ours.hasMark;
    return { bytes: new TextEncoder().encode(`${hasMark ? '\uFEFF' : ''}${merged.text}`), conflicts: merged.conflicts };
}

/** Undefined for what is not UTF-8: it is neither read nor written as something else. */
async function readText(file: string): Promise<{ readonly text: string; readonly hasMark: boolean } | undefined> {
    const bytes = await readFile(file);
    try {
        const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
        return { text: text.replace(/^\uFEFF/, ''), hasMark: text.startsWith('\uFEFF') };
    } catch {
        return undefined;
    }
}

async function mergedAsLines(files: Files, size: number): Promise<Merged | undefined> {
    const [base, ours, theirs] = [files.base, files.ours, files.theirs].map((file) => path.resolve(file));
    return mergeLines({ folder: process.cwd(), base: base!, ours: ours!, theirs: theirs!, size, names });
}
