import { DocumentState } from 'langium';
import { createRequestHandler, DefaultLanguageServer, type LangiumServices, type LangiumSharedServices } from 'langium/lsp';
import {
    CodeActionKind,
    type CompletionItem,
    type InitializeParams,
    type InitializeResult,
    type SelectionRange,
    type SelectionRangeParams,
} from 'vscode-languageserver';
import { coloursIn, writtenColour } from '../editor/colours';
import { resolveProposal } from '../editor/lazy-documentation';
import { selectionRanges } from '../editor/selection-ranges';

/** Answers what Langium's own server does not know: colours and selection ranges. */
export class KerfLanguageServer extends DefaultLanguageServer {
    constructor(services: LangiumSharedServices) {
        super(services);
        const connection = services.lsp.Connection;
        if (connection === undefined) return;
        const colours = createRequestHandler((_language, document) => coloursIn(document), services, DocumentState.Parsed);
        const spans = createRequestHandler<SelectionRangeParams, SelectionRange[], never>(
            (_language, document, { positions }) => selectionRanges(document, positions),
            services,
            DocumentState.Parsed,
        );
        connection.onDocumentColor(async (params, token) => (await colours(params, token)) ?? []);
        const documents = services.workspace.TextDocuments;
        connection.onColorPresentation(({ color, textDocument, range }) =>
            writtenColour(color, documents.get(textDocument.uri)?.getText(range) ?? ''),
        );
        connection.onSelectionRanges(spans);
        connection.onCompletionResolve((item) => resolveIn(services, item));
    }

    protected override buildInitializeResult(params: InitializeParams): InitializeResult {
        const result = super.buildInitializeResult(params);
        const { capabilities } = result;
        return {
            ...result,
            capabilities: {
                ...capabilities,
                colorProvider: true,
                selectionRangeProvider: true,
                ...(capabilities.completionProvider && {
                    completionProvider: { ...capabilities.completionProvider, resolveProvider: true },
                }),
                codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite] },
            },
        };
    }
}

function resolveIn({ ServiceRegistry }: LangiumSharedServices, item: CompletionItem): CompletionItem {
    const [language] = ServiceRegistry.all;
    return language === undefined ? item : resolveProposal(item, language as LangiumServices);
}
