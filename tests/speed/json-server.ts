/** The peer of client.ts: the JSON language service with a schema, as a server over stdio. */
import { getLanguageService } from 'vscode-json-languageservice';
import { createConnection, ProposedFeatures, TextDocumentSyncKind, TextDocuments } from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { schema } from './language-texts';

const connection = createConnection(ProposedFeatures.all, process.stdin, process.stdout);
const documents = new TextDocuments(TextDocument);
const service = getLanguageService({});
service.configure({ schemas: [{ uri: 'shop://schema', fileMatch: ['*.json'], schema }] });

connection.onInitialize(() => ({
    capabilities: { textDocumentSync: TextDocumentSyncKind.Incremental, completionProvider: {}, hoverProvider: true },
}));
documents.onDidChangeContent(async ({ document }) => {
    const diagnostics = await service.doValidation(document, service.parseJSONDocument(document));
    await connection.sendDiagnostics({ uri: document.uri, version: document.version, diagnostics });
});
connection.onCompletion(({ textDocument, position }) => {
    const document = documents.get(textDocument.uri)!;
    return service.doComplete(document, position, service.parseJSONDocument(document));
});
connection.onHover(({ textDocument, position }) => {
    const document = documents.get(textDocument.uri)!;
    return service.doHover(document, position, service.parseJSONDocument(document));
});
documents.listen(connection);
connection.listen();
