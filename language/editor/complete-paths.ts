import { type FileSystemNode, type FileSystemProvider, type URI, UriUtils } from 'langium';
import { type CompletionItem, CompletionItemKind } from 'vscode-languageserver';
import { resolvePath } from '../names/used-files';

type Proposal = Partial<CompletionItem> & { readonly label: string };

const artEnding = /\.(?:svg|png|jpe?g)$/i;
const recipeEnding = /\.kerf$/;

/** A workshop's folder is looked through so deep, and for so many files. */
const deepest = 3;
const mostFiles = 300;

/** Files that the path so far can lead to, seen from the file it stands in, near ones first, and the folders beside them. */
export async function proposePaths(
    typed: string,
    from: URI,
    wanted: 'art' | 'recipe',
    files: FileSystemProvider,
): Promise<Proposal[]> {
    const typedFolder = typed.slice(0, typed.lastIndexOf('/') + 1);
    const ending = wanted === 'art' ? artEnding : recipeEnding;
    const start = typedFolder === '' ? UriUtils.dirname(from) : resolvePath(typedFolder, from);
    if (start === undefined) return [];
    const found: Proposal[] = [];
    let level = [{ path: typedFolder, uri: start }];
    for (let depth = 0; depth <= deepest && level.length > 0 && found.length < mostFiles; depth++) {
        const next: typeof level = [];
        for (const { path, uri } of level) {
            const entries = await files.readDirectory(uri).catch((): FileSystemNode[] => []);
            for (const entry of entries) {
                const name = UriUtils.basename(entry.uri);
                if (name.startsWith('.') || name === 'node_modules') continue;
                if (entry.isDirectory) next.push({ path: `${path}${name}/`, uri: entry.uri });
                else if (ending.test(name) && entry.uri.toString() !== from.toString()) {
                    found.push({ label: `${path}${name}`, kind: CompletionItemKind.File, sortText: `0${depth}` });
                }
            }
        }
        if (depth === 0) found.push(...next.map(({ path }) => folder(path)));
        level = next;
    }
    const up = /^(?:\.\.\/)*$/.test(typedFolder) ? [folder(`${typedFolder}../`)] : [];
    return [...found.slice(0, mostFiles), ...up];
}

function folder(path: string): Proposal {
    return { label: path, kind: CompletionItemKind.Folder, sortText: path.endsWith('../') ? '2' : '1' };
}
