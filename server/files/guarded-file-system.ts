import { stat } from 'node:fs/promises';
import { type FileSystemNode, type FileSystemProvider, URI } from 'langium';
import { NodeFileSystem } from 'langium/node';
import { asynchronousOnly } from './asynchronous-only';
import { skippedFolders } from './skipped-folders';
import type { WorkspaceFiles } from './workspace-files';

/** A recipe file is text that somebody wrote by hand; more than this many bytes is something else. */
export const largestRecipe = 4 * 1024 * 1024;

/**
 * The file system that the language sees: recipe files inside the workspace's roots and nothing
 * else, so that `use` cannot be made to read what it should not.
 */
class GuardedFileSystem {
    private readonly disk = NodeFileSystem.fileSystemProvider();

    constructor(private readonly files: WorkspaceFiles) {}

    async readFile(uri: URI): Promise<string> {
        const place = await this.files.resolve(uri.toString());
        if ('problem' in place) throw new Error(`${uri.toString()} is ${place.problem}`);
        const status = await stat(place.path);
        if (!status.isFile() || status.size > largestRecipe) throw new Error(`${uri.toString()} is no recipe file`);
        return this.disk.readFile(URI.file(place.path));
    }

    async readBinary(uri: URI): Promise<Uint8Array> {
        return new TextEncoder().encode(await this.readFile(uri));
    }

    async readDirectory(uri: URI): Promise<FileSystemNode[]> {
        const place = await this.files.resolve(`${uri.toString()}/.`);
        if ('problem' in place) return [];
        const nodes = await this.disk.readDirectory(uri).catch(() => []);
        return nodes.filter(
            (node) => !node.isDirectory || !skippedFolders.has(node.uri.path.slice(node.uri.path.lastIndexOf('/') + 1)),
        );
    }

    async exists(uri: URI): Promise<boolean> {
        return !('problem' in (await this.files.resolve(uri.toString())));
    }

    async stat(uri: URI): Promise<FileSystemNode> {
        const place = await this.files.resolve(uri.toString());
        if ('problem' in place) throw new Error(`${uri.toString()} is ${place.problem}`);
        return this.disk.stat(uri);
    }
}

export function guardedFileSystem(files: WorkspaceFiles): { fileSystemProvider: () => FileSystemProvider } {
    const guarded = new GuardedFileSystem(files);
    return asynchronousOnly({
        readFile: (uri) => guarded.readFile(uri),
        readBinary: (uri) => guarded.readBinary(uri),
        readDirectory: (uri) => guarded.readDirectory(uri),
        exists: (uri) => guarded.exists(uri),
        stat: (uri) => guarded.stat(uri),
    });
}
