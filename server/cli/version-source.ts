import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { LocalAsker } from '../engine/asker';
import { largestRecipe } from '../files/guarded-file-system';
import type { Repository } from '../git/repository';
import { type OpenVersion, openVersion } from '../review/open-version';
import { diskSource } from './open-files';
import { inputName, readStandardInput, standardInput } from './standard-input';
import { withTextAt } from './text-at';
import { UsageError } from './usage-error';

/** Files of a repository as they lie in its work tree. Names are the repository's, and may be still on their way. */
export async function openWorkTree(
    repository: Repository,
    names: readonly string[] | Promise<readonly string[]>,
): Promise<OpenVersion> {
    const uriOf = (name: string): string => pathToFileURL(path.join(repository.top, ...name.split('/'))).toString();
    const source = await diskSource([repository.top]);
    return openVersion(source, filesOf(repository, names), uriOf, (name) => `${name} in the work tree`, new LocalAsker());
}

async function filesOf({ top }: Repository, names: readonly string[] | Promise<readonly string[]>): Promise<string[]> {
    const all = await names;
    const are = await Promise.all(all.map((name) => isFile(path.join(top, name))));
    return all.filter((_, index) => are[index]);
}

/**
 * One file on disk. `as` is the path from which its own paths count, when it is only a copy of what
 * lies there (git hands such copies to its helpers). What it uses and its art are those beside that path.
 * @param side what the copy is called beside the name of that file: a temporary name says nothing to anybody
 */
export async function openFile(name: string, as = name, side = ''): Promise<OpenVersion> {
    // What git hands over for a side on which there is no file.
    if (name === '/dev/null' || name === 'nul')
        return openVersion(
            await diskSource([]),
            [],
            () => '',
            () => 'nothing',
            new LocalAsker(),
        );
    const isInput = name === standardInput;
    if (!isInput && !(await isFile(path.resolve(name)))) throw new UsageError(`There is no file ${name}.`);
    const at = path.resolve(isInput && as === name ? inputName : as);
    const disk = await diskSource([process.cwd(), path.dirname(at)]);
    const uri = pathToFileURL(at).toString();
    const text = isInput ? await readStandardInput() : as === name ? undefined : await copyOf(name);
    const source = text === undefined ? disk : withTextAt(disk, uri, text);
    return openVersion(
        source,
        [name],
        () => uri,
        () => (as === name || side === '' ? name : `${as} ${side}`),
        new LocalAsker(),
    );
}

async function copyOf(name: string): Promise<string> {
    const copy = path.resolve(name);
    if ((await stat(copy)).size > largestRecipe) throw new UsageError(`${copy} is too large for a recipe.`);
    return readFile(copy, 'utf8');
}

async function isFile(file: string): Promise<boolean> {
    const status = await stat(file).catch(() => undefined);
    return status?.isFile() === true;
}
