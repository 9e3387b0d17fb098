import { CstUtils, type LangiumDocument, URI } from 'langium';
import type { CodeActionParams, TextDocumentEdit, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import { rangeOf } from '../../diagnostic';
import type { KerfServices } from '../../services';
import type { KerfLanguageServer } from '../../workspace/language-server';
import type { Offer } from '../late-edits';
import { convertUnits } from './convert-units';
import { moveStock } from './move-stock';
import { ownStock } from './own-stock';
import type { Refactor } from './refactor';

const offers = [convertUnits, ownStock, moveStock];

/** What can be done with the words under the cursor though nothing is wrong with them. */
export function refactorActions(document: LangiumDocument, params: CodeActionParams, services: KerfServices): Offer[] {
    const root = document.parseResult.value.$cstNode;
    const offset = document.textDocument.offsetAt(params.range.start);
    const leaf = root && (CstUtils.findLeafNodeAtOffset(root, offset) ?? CstUtils.findLeafNodeBeforeOffset(root, offset));
    if (leaf === undefined || leaf.hidden) return [];
    const { createsFiles } = (services.shared.lsp.LanguageServer as KerfLanguageServer).client;
    const place = { document, node: leaf.astNode, offset, services, createsFiles };
    return offers
        .flatMap((offer) => offer(place))
        .map((refactor) => ({
            action: { title: refactor.title, kind: refactor.kind },
            edit: () => workspaceEdit(refactor, services),
            files: [...refactor.edits.keys()],
        }));
}

function workspaceEdit({ edits, files }: Refactor, services: KerfServices): WorkspaceEdit {
    const changes: Record<string, TextEdit[]> = {};
    for (const [uri, spans] of edits) {
        const document = services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
        if (document === undefined) continue;
        changes[uri] = spans.map((span) => ({ range: rangeOf({ uri, ...span }, document), newText: span.text }));
    }
    if (files === undefined) return { changes };
    const start = { line: 0, character: 0 };
    const made = [...files].flatMap(([uri, newText]) => [
        { kind: 'create' as const, uri },
        fileEdit(uri, [{ range: { start, end: start }, newText }]),
    ]);
    return { documentChanges: [...made, ...Object.entries(changes).map(([uri, texts]) => fileEdit(uri, texts))] };
}

function fileEdit(uri: string, edits: TextEdit[]): TextDocumentEdit {
    return { textDocument: { uri, version: null }, edits };
}
