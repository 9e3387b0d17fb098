import type { Recipe } from '../../shared/recipe/recipe';
import type { ArtFile } from '../engine/jobs';
import type { FileReader } from '../files/read-result';

/** Art files as last read. A file is read again only after somebody said that it may have changed. */
export class ArtCache {
    private readonly files = new Map<string, Promise<ArtFile>>();

    constructor(private readonly read: FileReader) {}

    of(recipe: Recipe): Promise<ArtFile[]> {
        return Promise.all([...new Set(recipe.arts.map((art) => art.uri))].map((uri) => this.file(uri)));
    }

    /** Forgets a file; true if it had been read. */
    changed(uri: string): boolean {
        return this.files.delete(uri);
    }

    /** Files that could not be read when they were last asked for. */
    async unread(): Promise<string[]> {
        const files = await Promise.all(this.files.values());
        return files.flatMap(({ uri, problem }) => (problem === undefined ? [] : [uri]));
    }

    file(uri: string): Promise<ArtFile> {
        let file = this.files.get(uri);
        if (file === undefined) {
            file = this.read(uri).then((result) => ({ uri, ...result }));
            this.files.set(uri, file);
        }
        return file;
    }
}
