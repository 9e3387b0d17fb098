import { type FileSystemNode, type FileSystemProvider, type URI, UriUtils } from 'langium';
import { type CompletionItem, CompletionItemKind } from 'vscode-languageserver';
import { resolvePath } from '../names/used-files';

type Proposal = Partial<CompletionItem> & { readonly label: string };

const artEnding = /\.(?:svg|png|jpe?g)$/i;
const recipeEnding = /\.kerf$/;

/** Folders and files that the path so far can lead to, seen from the file it stands in. */
export async function proposePaths(
    typed: string,
    from: URI,
    wanted: 'art' | 'recipe',
    files: FileSystemProvider,
): Promise<Proposal[]> {
    const folder = typed.slice(0, typed.lastIndexOf('/') + 1);
    const ending = wanted === 'art' ? artEnding : recipeEnding;
    const uri = folder === '' ? UriUtils.dirname(from) : resolvePath(folder, from);
    if (uri === undefined) return [];
    const entries = await files.readDirectory(uri).catch((): FileSystemNode[] => []);
    return entries.flatMap((entry): Proposal[] => {
        const name = UriUtils.basename(entry.uri);
        if (name.startsWith('.') || name === 'node_modules') return [];
        if (entry.isDirectory) return [{ label: `${folder}${name}/`, kind: CompletionItemKind.Folder, sortText: '1' }];
        if (!ending.test(name) || entry.uri.toString() === from.toString()) return [];
        return [{ label: `${folder}${name}`, kind: CompletionItemKind.File, sortText: '0' }];
    });
}
