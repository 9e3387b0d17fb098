import { DocumentState, type LangiumDocument, URI } from 'langium';
import {
    type Connection,
    type Diagnostic,
    type DocumentDiagnosticReport,
    DocumentDiagnosticReportKind,
    type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver';
import { isBuiltIn } from '../../language/built-in';
import type { Workshop } from './workshop';

/** Answers clients that ask for findings: of one file, or of the whole workspace. What has not changed is not sent twice. */
export class PulledDiagnostics {
    private readonly last = new Map<string, { readonly said: string; readonly id: string }>();
    private counter = 0;

    /** @param diagnosticsOf what is known of a file at this moment */
    constructor(
        connection: Connection,
        workshop: Workshop,
        private readonly diagnosticsOf: (document: LangiumDocument) => Diagnostic[],
    ) {
        const { LangiumDocuments, DocumentBuilder, WorkspaceManager } = workshop.services.shared.workspace;
        DocumentBuilder.onUpdate((_changed, deleted) => {
            for (const uri of deleted) this.last.delete(uri.toString());
        });
        connection.languages.diagnostics.on(async ({ textDocument, previousResultId }, token) => {
            await WorkspaceManager.ready;
            const document = await workshop.linked(textDocument.uri, token);
            if (document === undefined) return { kind: DocumentDiagnosticReportKind.Full, items: [] };
            return this.report(document, previousResultId);
        });
        connection.languages.diagnostics.onWorkspace(async ({ previousResultIds }, token) => {
            await WorkspaceManager.ready;
            await DocumentBuilder.waitUntil(DocumentState.Linked, token);
            const before = new Map(previousResultIds.map(({ uri, value }) => [URI.parse(uri).toString(), value]));
            const there = LangiumDocuments.all.toArray().filter(({ uri }) => !isBuiltIn(uri.toString()));
            const items: WorkspaceDocumentDiagnosticReport[] = there.map((document) => {
                const uri = document.uri.toString();
                const open = workshop.services.shared.workspace.TextDocuments.get(uri);
                return { ...this.report(document, before.get(uri)), uri, version: open?.version ?? null };
            });
            const gone = [...before.keys()].filter((uri) => !LangiumDocuments.hasDocument(URI.parse(uri)));
            for (const uri of gone) items.push({ kind: DocumentDiagnosticReportKind.Full, uri, version: null, items: [] });
            return { items };
        });
    }

    private report(document: LangiumDocument, previous: string | undefined): DocumentDiagnosticReport {
        const uri = document.uri.toString();
        const items = this.diagnosticsOf(document);
        const said = JSON.stringify(items);
        let known = this.last.get(uri);
        if (known?.said !== said) {
            known = { said, id: String(++this.counter) };
            this.last.set(uri, known);
        }
        if (known.id === previous) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId: known.id };
        return { kind: DocumentDiagnosticReportKind.Full, resultId: known.id, items };
    }
}
