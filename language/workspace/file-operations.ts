import { type LangiumDocuments, URI, UriUtils } from 'langium';
import type { FileOperationHandler, LangiumSharedServices } from 'langium/lsp';
import type { FileOperationOptions, FileRename, RenameFilesParams, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
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
    readonly fileOperationOptions: FileOperationOptions = { willRename: { filters } };
    private readonly documents: LangiumDocuments;

    constructor(services: LangiumSharedServices) {
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
