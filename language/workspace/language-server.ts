import { DocumentState } from 'langium';
import {
    type CodeActionProvider,
    createRequestHandler,
    DefaultLanguageServer,
    type LangiumServices,
    type LangiumSharedServices,
} from 'langium/lsp';
import {
    CodeActionKind,
    type CompletionItem,
    type DocumentRangesFormattingParams,
    type InitializeParams,
    type InitializeResult,
    type LinkedEditingRangeParams,
    type LinkedEditingRanges,
    type SelectionRange,
    type SelectionRangeParams,
    type TextEdit,
} from 'vscode-languageserver';
import { version } from '../../package.json';
import type { KerfFormatter } from '../editing/formatter';
import type { ActionResolver } from '../editing/late-edits';
import { coloursIn, writtenColour } from '../editor/colours';
import { resolveProposal } from '../editor/lazy-documentation';
import { linkedRanges } from '../editor/linked-editing';
import { selectionRanges } from '../editor/selection-ranges';
import { abilitiesOf, type ClientAbilities, plainClient } from './client';

const actionKinds = [
    CodeActionKind.QuickFix,
    CodeActionKind.RefactorRewrite,
    CodeActionKind.RefactorExtract,
    CodeActionKind.RefactorMove,
    CodeActionKind.SourceFixAll,
];

/** Answers what Langium's own server does not know: colours, selection ranges, names that change together. */
export class KerfLanguageServer extends DefaultLanguageServer {
    /** What the client can do; nothing beyond the plain protocol until it has said so. */
    client: ClientAbilities = plainClient;

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
        const linked = createRequestHandler<LinkedEditingRangeParams, LinkedEditingRanges, never>(
            (_language, document, { position }) => linkedRanges(document, position),
            services,
            DocumentState.Linked,
        );
        connection.onDocumentColor(async (params, token) => (await colours(params, token)) ?? []);
        const documents = services.workspace.TextDocuments;
        connection.onColorPresentation(({ color, textDocument, range }) =>
            writtenColour(color, documents.get(textDocument.uri)?.getText(range) ?? ''),
        );
        connection.onSelectionRanges(spans);
        connection.languages.onLinkedEditingRange(linked);
        connection.onDocumentRangesFormatting(
            createRequestHandler<DocumentRangesFormattingParams, TextEdit[], never>(
                ({ lsp }, document, params) =>
                    (lsp?.Formatter as KerfFormatter | undefined)?.formatDocumentRanges(document, params),
                services,
                DocumentState.Parsed,
            ),
        );
        connection.onCodeActionResolve((action) =>
            services.workspace.WorkspaceLock.read(() => actionsOf(services)?.resolve(action) ?? action),
        );
        connection.onCompletionResolve((item) => resolveIn(services, item));
    }

    override initialize(params: InitializeParams): Promise<InitializeResult> {
        this.client = abilitiesOf(params);
        return super.initialize(params);
    }

    protected override buildInitializeResult(params: InitializeParams): InitializeResult {
        const result = super.buildInitializeResult(params);
        const { executeCommandProvider, ...capabilities } = result.capabilities;
        return {
            ...result,
            serverInfo: { name: 'kerfbook', version },
            capabilities: {
                ...capabilities,
                // Said here, it need not be registered: a client may refuse that.
                workspace: { ...capabilities.workspace, workspaceFolders: { supported: true, changeNotifications: true } },
                colorProvider: true,
                documentRangeFormattingProvider: { rangesSupport: true },
                selectionRangeProvider: true,
                linkedEditingRangeProvider: true,
                ...(capabilities.completionProvider && {
                    completionProvider: { ...capabilities.completionProvider, resolveProvider: true },
                }),
                codeActionProvider: { codeActionKinds: actionKinds, ...(this.client.resolvesEdits && { resolveProvider: true }) },
                ...(this.client.runsCommands && executeCommandProvider && { executeCommandProvider }),
                ...(this.client.pulls && {
                    diagnosticProvider: { identifier: 'kerfbook', interFileDependencies: true, workspaceDiagnostics: true },
                }),
            },
        };
    }
}

function resolveIn({ ServiceRegistry }: LangiumSharedServices, item: CompletionItem): CompletionItem {
    const [language] = ServiceRegistry.all;
    return language === undefined ? item : resolveProposal(item, language as LangiumServices);
}

function actionsOf({ ServiceRegistry }: LangiumSharedServices): ActionResolver | undefined {
    const [language] = ServiceRegistry.all;
    return (language as LangiumServices | undefined)?.lsp.CodeActionProvider as (CodeActionProvider & ActionResolver) | undefined;
}
