import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { LocalAsker } from '../engine/asker';
import { asynchronousOnly } from '../files/asynchronous-only';
import { largestRecipe } from '../files/guarded-file-system';
import type { Repository } from '../git/repository';
import { type OpenVersion, openVersion } from '../review/open-version';
import type { Source } from '../workshop/open-workshop';
import { diskSource } from './open-files';
import { UsageError } from './usage-error';

/** Files of a repository as they lie in its work tree. Names are the repository's. */
export async function openWorkTree(repository: Repository, names: readonly string[]): Promise<OpenVersion> {
    const uriOf = (name: string): string => pathToFileURL(path.join(repository.top, ...name.split('/'))).toString();
    const there: string[] = [];
    for (const name of names) if (await isFile(path.join(repository.top, name))) there.push(name);
    return openVersion(await diskSource([repository.top]), there, uriOf, (name) => `${name} in the work tree`, new LocalAsker());
}

/**
 * One file on disk. `as` is the path from which its own paths count, when it is only a copy of what
 * lies there (git hands such copies to its helpers). What it uses and its art are those beside that path.
 */
export async function openFile(name: string, as = name): Promise<OpenVersion> {
    // What git hands over for a side on which there is no file.
    if (name === '/dev/null' || name === 'nul')
        return openVersion(
            await diskSource([]),
            [],
            () => '',
            () => 'nothing',
            new LocalAsker(),
        );
    if (!(await isFile(path.resolve(name)))) throw new UsageError(`There is no file ${name}.`);
    const at = path.resolve(as);
    const disk = await diskSource([process.cwd(), path.dirname(at)]);
    const uri = pathToFileURL(at).toString();
    const source = as === name ? disk : await withCopy(disk, uri, path.resolve(name));
    return openVersion(
        source,
        [name],
        () => uri,
        () => name,
        new LocalAsker(),
    );
}

/** The disk, but for one address, at which the copy's text is read. */
async function withCopy({ fileSystem, read }: Source, uri: string, copy: string): Promise<Source> {
    if ((await stat(copy)).size > largestRecipe) throw new UsageError(`${copy} is too large for a recipe.`);
    const text = await readFile(copy, 'utf8');
    const disk = fileSystem.fileSystemProvider();
    return {
        read,
        fileSystem: asynchronousOnly({
            readFile: async (asked) =>
                asked.toString() === uri || pathToFileURL(asked.fsPath).toString() === uri ? text : disk.readFile(asked),
            readBinary: (asked) => disk.readBinary(asked),
            readDirectory: (asked) => disk.readDirectory(asked),
            exists: (asked) => disk.exists(asked),
            stat: (asked) => disk.stat(asked),
        }),
    };
}

async function isFile(file: string): Promise<boolean> {
    const status = await stat(file).catch(() => undefined);
    return status?.isFile() === true;
}
