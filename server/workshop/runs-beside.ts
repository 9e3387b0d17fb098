import { type FileSystemProvider, type URI, UriUtils } from 'langium';
import { isRecipeFile } from '../../language/names/used-files';

/** The head of a run, anywhere on a line, with the name of its recipe. */
const runHead = /\brun\s+(\S+)\s+\d{4}-\d/g;
const recipeHead = /\brecipe\s+([^\s"{]+)/g;

/**
 * What belongs to these files though nothing uses it (language/names/runs-in-sight.ts): runs in their folders and below, and the
 * recipes, in folders above, of runs and orders that stand in a file of their own. Folders that begin with a dot are left alone; what
 * cannot be read is left out.
 */
export async function runsBeside(files: readonly URI[], disk: FileSystemProvider): Promise<URI[]> {
    const beside = new Beside(disk, files);
    for (const file of files) {
        if (file.scheme !== 'file') continue;
        await beside.findRecipesOf(file);
        await beside.findRunsBelow(UriUtils.dirname(file));
    }
    return beside.found();
}

class Beside {
    private readonly wanted = new Map<string, URI>();
    private readonly given: ReadonlySet<string>;
    private readonly texts = new Map<string, Promise<string>>();
    private readonly walked = new Set<string>();
    private readonly looked = new Set<string>();

    constructor(
        private readonly disk: FileSystemProvider,
        files: readonly URI[],
    ) {
        this.given = new Set(files.map((file) => file.toString()));
    }

    found(): URI[] {
        return [...this.wanted.values()];
    }

    async findRunsBelow(folder: URI): Promise<void> {
        if (this.walked.has(folder.toString())) return;
        this.walked.add(folder.toString());
        const nodes = await this.list(folder);
        // All at once: one after the other, thousands of files of a revision would each wait for git.
        for (const { uri, isFile } of nodes) if (isFile && isRecipeFile(uri)) void this.text(uri);
        for (const { uri, isFile, isDirectory } of nodes) {
            if (isDirectory && !UriUtils.basename(uri).startsWith('.')) await this.findRunsBelow(uri);
            else if (isFile && isRecipeFile(uri) && namesAfter(runHead, await this.text(uri)).size > 0) {
                this.want(uri);
                // A run counts for the others on its board only with the recipe that it means.
                await this.findRecipesOf(uri);
            }
        }
    }

    /** The folders from that of the file upwards, until each of its runs has a recipe that it can mean. */
    async findRecipesOf(file: URI): Promise<void> {
        if (this.looked.has(file.toString())) return;
        this.looked.add(file.toString());
        const text = await this.text(file);
        const missing = new Set([...namesAfter(runHead, text), ...wantedIn(text)]);
        for (const name of namesAfter(recipeHead, text)) missing.delete(name);
        for (let folder = UriUtils.dirname(file); missing.size > 0; folder = UriUtils.dirname(folder)) {
            const here = await this.list(folder);
            const met = new Set<string>();
            for (const { uri, isFile } of here) {
                if (!isFile || !isRecipeFile(uri)) continue;
                const names = [...namesAfter(recipeHead, await this.text(uri))].filter((name) => missing.has(name));
                if (names.length === 0) continue;
                for (const name of names) met.add(name);
                this.want(uri);
                await this.findRunsBelow(folder);
            }
            for (const name of met) missing.delete(name);
            if (folder.toString() === UriUtils.dirname(folder).toString()) return;
        }
    }

    private want(uri: URI): void {
        if (!this.given.has(uri.toString())) this.wanted.set(uri.toString(), uri);
    }

    private async list(folder: URI) {
        return this.disk.readDirectory(folder).catch(() => []);
    }

    private text(uri: URI): Promise<string> {
        const known = this.texts.get(uri.toString()) ?? this.disk.readFile(uri).catch(() => '');
        this.texts.set(uri.toString(), known);
        return known;
    }
}

/** Names of recipes that the orders of a text want. */
function wantedIn(text: string): string[] {
    return [...text.matchAll(/\border\s+\d{4}-[^{]*\{([^}]*)\}/g)].flatMap((order) => [
        ...namesAfter(/([\p{L}_][\w-]*)\s+\d+\b/gu, order[1]!),
    ]);
}

function namesAfter(head: RegExp, text: string): Set<string> {
    return new Set([...text.matchAll(head)].map((match) => match[1]!));
}
