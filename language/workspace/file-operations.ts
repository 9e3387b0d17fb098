import { type LangiumDocuments, URI, UriUtils } from 'langium';
import type { FileOperationHandler, LangiumSharedServices } from 'langium/lsp';
import {
    type DeleteFilesParams,
    type FileOperationOptions,
    type FileRename,
    MessageType,
    type RenameFilesParams,
    type TextEdit,
    type WorkspaceEdit,
} from 'vscode-languageserver';
import { phrase } from '../../shared/recipe/phrase';
import { isBuiltIn } from '../built-in';
import { isNewer } from '../edition';
import { pathsIn } from '../editor/paths';
import { isFile } from '../generated/ast';
import { resolvePath } from '../names/used-files';

const filters = [
    { pattern: { glob: '**/*.{kerf,svg,png,jpg,jpeg}', matches: 'file' as const } },
    { pattern: { glob: '**', matches: 'folder' as const } },
];

/** When files or folders are about to move, every `use` and `art` goes on leading where it led. */
export class KerfFileOperations implements FileOperationHandler {
    readonly fileOperationOptions: FileOperationOptions = { willRename: { filters }, willDelete: { filters } };
    private readonly documents: LangiumDocuments;

    constructor(private readonly services: LangiumSharedServices) {
        this.documents = services.workspace.LangiumDocuments;
    }

    async willRenameFiles({ files }: RenameFilesParams): Promise<WorkspaceEdit> {
        const changes: Record<string, TextEdit[]> = {};
        for (const document of this.documents.all) {
            const file = document.parseResult.value;
            if (isBuiltIn(document.uri.toString()) || !isFile(file) || isNewer(document)) continue;
            const home = moved(document.uri, files) ?? document.uri;
            const text = document.textDocument;
            for (const { offset, end, target } of pathsIn(file)) {
                const goal = moved(target, files) ?? target;
                const written = text.getText().slice(offset, end);
                if (resolvePath(written.replaceAll(/\\(["\\])/g, '$1'), home)?.toString() === goal.toString()) continue;
                const path = UriUtils.relative(UriUtils.dirname(home), goal).replaceAll(/["\\]/g, '\\$&');
                const edit = { range: { start: text.positionAt(offset), end: text.positionAt(end) }, newText: path };
                changes[document.uri.toString()] = [...(changes[document.uri.toString()] ?? []), edit];
            }
        }
        return { changes };
    }

    /** Nothing can be mended then: whoever deletes what recipes stand on hears which. */
    async willDeleteFiles({ files }: DeleteFilesParams): Promise<WorkspaceEdit | null> {
        const goes = (uri: URI): boolean =>
            moved(
                uri,
                files.map(({ uri: oldUri }) => ({ oldUri, newUri: oldUri })),
            ) !== undefined;
        const uses = new Map<string, Set<string>>();
        for (const document of this.documents.all) {
            const file = document.parseResult.value;
            if (isBuiltIn(document.uri.toString()) || !isFile(file) || goes(document.uri)) continue;
            for (const { target } of pathsIn(file)) {
                if (!goes(target)) continue;
                const name = UriUtils.basename(target);
                uses.set(name, (uses.get(name) ?? new Set()).add(UriUtils.basename(document.uri)));
            }
        }
        if (uses.size === 0) return null;
        const told = [...uses].map(([name, by]) => phrase`${name} is used by ${[...by].toSorted().join(', ')}.`).join(' ');
        const message = phrase`${told} Without it they cannot be worked out: put it back, or take its lines out.`;
        void this.services.lsp.Connection?.sendNotification('window/showMessage', { type: MessageType.Warning, message });
        return null;
    }
}

/** Where a file will be, if it or a folder around it moves. */
function moved(uri: URI, files: readonly FileRename[]): URI | undefined {
    const from = uri.toString();
    for (const { oldUri, newUri } of files) {
        const [old, goal] = [URI.parse(oldUri).toString(), URI.parse(newUri).toString()];
        if (from === old) return URI.parse(newUri);
        if (from.startsWith(`${old}/`)) return URI.parse(`${goal}${from.slice(old.length)}`);
    }
    return undefined;
}
