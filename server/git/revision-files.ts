import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type FileSystemNode, type FileSystemProvider, URI } from 'langium';
import { asynchronousOnly } from '../files/asynchronous-only';
import { largestRecipe } from '../files/guarded-file-system';
import { type FileReader, largestArt } from '../files/read-result';
import { skippedFolders } from '../files/skipped-folders';
import { insideOf } from './inside-of';
import type { Commit, Repository } from './repository';
import { filesThrough, readThrough } from './submodules';

/**
 * The files of one commit, each at the address it would have in the work tree, so that what a
 * recipe uses and its art come from the same commit, out of a submodule from that which the commit names.
 * Nothing outside the repository is read.
 * `reaches` says of a file of it whether it may be read.
 */
export class RevisionFiles {
    private files: Promise<string[]> | undefined;

    constructor(
        private readonly repository: Repository,
        private readonly commit: Commit,
        private readonly reaches: (uri: string) => Promise<boolean> = async () => true,
    ) {}

    /** Art as it was. */
    readonly read: FileReader = async (uri) => {
        const file = await this.pathOf(uri);
        if (file === undefined) return { problem: 'outside', version: 'outside' };
        return readThrough(this.repository, this.commit, file, largestArt);
    };

    /** Recipe files as they were, for the language. */
    fileSystem(): { fileSystemProvider: () => FileSystemProvider } {
        const text = async (uri: URI): Promise<string> => {
            const file = await this.pathOf(uri.toString());
            const found = file === undefined ? undefined : await readThrough(this.repository, this.commit, file, largestRecipe);
            if (found === undefined || 'problem' in found) throw new Error(`${uri.toString()} is not in ${this.commit.name}`);
            return Buffer.from(found.bytes).toString('utf8');
        };
        const there = (uri: URI): Promise<boolean> =>
            text(uri).then(
                () => true,
                () => false,
            );
        return asynchronousOnly({
            readFile: text,
            readBinary: async (uri) => new TextEncoder().encode(await text(uri)),
            readDirectory: (uri) => this.inFolder(uri),
            exists: there,
            stat: async (uri) => ({ isFile: await there(uri), isDirectory: false, uri }),
        });
    }

    /** The address of a file of the repository. */
    uriOf(file: string): string {
        return pathToFileURL(path.join(this.repository.top, ...file.split('/'))).toString();
    }

    /** What lies in a folder, as the commit has it. */
    private async inFolder(folder: URI): Promise<FileSystemNode[]> {
        const within = folder.toString() === this.uriOf('') ? '' : await this.pathOf(folder.toString());
        if (within === undefined) return [];
        this.files ??= filesThrough(this.repository, this.commit);
        const start = within === '' ? '' : `${within}/`;
        const nodes = new Map<string, FileSystemNode>();
        for (const file of await this.files) {
            if (!file.startsWith(start)) continue;
            const [name = '', ...deeper] = file.slice(start.length).split('/');
            const isDirectory = deeper.length > 0;
            if (isDirectory && skippedFolders.has(name)) continue;
            nodes.set(name, { isFile: !isDirectory, isDirectory, uri: URI.parse(this.uriOf(`${start}${name}`)) });
        }
        return [...nodes.values()];
    }

    private async pathOf(uri: string): Promise<string | undefined> {
        try {
            const file = insideOf(this.repository.top, fileURLToPath(uri));
            return (await this.reaches(uri)) ? file : undefined;
        } catch {
            return undefined; // an address of another kind
        }
    }
}
