import { stat } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { LocalAsker } from '../engine/asker';
import { diskReader } from '../files/disk-reader';
import { guardedFileSystem } from '../files/guarded-file-system';
import { WorkspaceFiles } from '../files/workspace-files';
import { type OpenFiles, openWorkshop, type Source } from '../workshop/open-workshop';
import { askerFor } from './asker-for';
import { recipeFilesIn } from './recipe-files';
import { inputName, readStandardInput, standardInput } from './standard-input';
import { withTextAt } from './text-at';
import { UsageError } from './usage-error';

/**
 * Reads and builds the named recipe files, or every one in the named folders. What may be read is
 * the folder the command runs in and the folders that were named.
 * @param as where the text lies that comes from standard input (`-`)
 */
export async function openFiles(names: readonly string[], as?: string): Promise<OpenFiles & { readonly files: WorkspaceFiles }> {
    if (names.includes(standardInput)) return openStandardInput(names, as ?? inputName);
    if (as !== undefined) throw new UsageError('--as says where the text of standard input lies: give - instead of files.');
    const paths = await pathsOf(names.length === 0 ? ['.'] : names);
    if (paths.length === 0) throw new UsageError('There are no recipe files (*.kerf) here.');
    const source = await diskSource([process.cwd(), ...paths.map((file) => path.dirname(file))]);
    const open = await openWorkshop(
        source,
        paths.map((file) => pathToFileURL(file).toString()),
        fileURLToPath,
        await askerFor(paths.length),
    );
    return { ...open, files: source.files };
}

async function openStandardInput(names: readonly string[], as: string): Promise<OpenFiles & { readonly files: WorkspaceFiles }> {
    if (names.length > 1) throw new UsageError('Give either files or - for standard input.');
    const at = path.resolve(as);
    if (!at.endsWith('.kerf')) throw new UsageError(`${as} is not the name of a recipe file (*.kerf).`);
    const source = await diskSource([process.cwd(), path.dirname(at)]);
    const uri = pathToFileURL(at).toString();
    const open = await openWorkshop(withTextAt(source, uri, await readStandardInput()), [uri], fileURLToPath, new LocalAsker());
    return { ...open, files: source.files };
}

/** The disk below these folders and nothing else of it. */
export async function diskSource(roots: readonly string[]): Promise<Source & { readonly files: WorkspaceFiles }> {
    const files = new WorkspaceFiles();
    await files.setRoots(roots);
    return { files, fileSystem: guardedFileSystem(files), read: diskReader(files) };
}

async function pathsOf(names: readonly string[]): Promise<string[]> {
    const paths: string[] = [];
    for (const name of names) {
        const full = path.resolve(name);
        const status = await stat(full).catch(() => undefined);
        if (status === undefined) throw new UsageError(`There is no ${name}.`);
        if (status.isDirectory()) paths.push(...(await recipeFilesIn(full)));
        else if (full.endsWith('.kerf')) paths.push(full);
        else throw new UsageError(`${name} is not a recipe file (*.kerf).`);
    }
    return [...new Set(paths)];
}
