import { type LangiumDocument, type LangiumDocuments, type URI, UriUtils, WorkspaceCache } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import { type File, isFile, type Use } from '../generated/ast';

export function isRecipeFile(uri: URI): boolean {
    return uri.path.endsWith('.kerf');
}

/** The file that a `use "…"` means, seen from the file it stands in; undefined for what is not a path. */
export function usedUri(use: Use, from: URI): URI | undefined {
    return resolvePath(use.path, from);
}

/** Resolves a written path against the file it stands in. Backslashes count as slashes. */
export function resolvePath(path: string | undefined, from: URI): URI | undefined {
    if (path === undefined || path.trim() === '') return undefined;
    try {
        return UriUtils.resolvePath(UriUtils.dirname(from), path.replaceAll('\\', '/'));
    } catch {
        return undefined; // a base without a path, such as an untitled document
    }
}

/** A file that a document can see, with the chain of `use` statements through which it came in, outermost first. */
export interface UsedFile {
    readonly uri: URI;
    readonly document: LangiumDocument<File> | undefined;
    readonly through: readonly Use[];
}

/**
 * Which files a document sees: those it uses, and those they use, nearest first, each once. `use`
 * is transitive; a file that is met again is left out, so that cycles end here (findings/ reports them).
 */
export class UsedFiles {
    private readonly documents: LangiumDocuments;
    private readonly cache: WorkspaceCache<string, readonly UsedFile[]>;

    constructor(shared: LangiumSharedServices) {
        this.documents = shared.workspace.LangiumDocuments;
        this.cache = new WorkspaceCache(shared);
    }

    of(document: LangiumDocument): readonly UsedFile[] {
        return this.cache.get(document.uri.toString(), () => this.walk(document));
    }

    /** To be called when files have been read that were missing before. */
    forget(): void {
        this.cache.clear();
    }

    private walk(start: LangiumDocument): UsedFile[] {
        const found: UsedFile[] = [];
        const seen = new Set([start.uri.toString()]);
        let level: { document: LangiumDocument; through: readonly Use[] }[] = [{ document: start, through: [] }];
        while (level.length > 0) {
            const next: typeof level = [];
            for (const { document, through } of level) {
                const file = document.parseResult.value;
                if (!isFile(file)) continue;
                for (const use of file.uses) {
                    const uri = usedUri(use, document.uri);
                    if (uri === undefined || seen.has(uri.toString())) continue;
                    seen.add(uri.toString());
                    const used = this.documents.getDocument(uri) as LangiumDocument<File> | undefined;
                    found.push({ uri, document: used, through: [...through, use] });
                    if (used !== undefined) next.push({ document: used, through: [...through, use] });
                }
            }
            level = next;
        }
        return found;
    }
}
