import { createGrammarConfig, type DeepPartial, inject, type Module } from 'langium';
import {
    createDefaultModule,
    createDefaultSharedModule,
    type DefaultSharedModuleContext,
    type LangiumServices,
    type LangiumSharedServices,
} from 'langium/lsp';
import { KerfCodeActions } from './editing/code-actions';
import { KerfFormatter } from './editing/formatter';
import { KerfCodeLenses } from './editor/code-lenses';
import { KerfCompletion } from './editor/completion';
import { KerfDefinition } from './editor/definition';
import { KerfDocumentLinks } from './editor/document-links';
import { KerfFolding } from './editor/folding';
import { KerfHighlights } from './editor/highlights';
import { KerfHover } from './editor/hover';
import { NameMatcher } from './editor/name-matcher';
import { KerfNodeKinds } from './editor/node-kinds';
import { KerfOutline } from './editor/outline';
import { KerfRename } from './editor/rename';
import { KerfSemanticTokens } from './editor/semantic-tokens';
import { KerfSignatureHelp } from './editor/signature-help';
import { KerfTypeHierarchy } from './editor/type-hierarchy';
import { KerfWorkspaceSymbols } from './editor/workspace-symbols';
import { KerfGeneratedModule, KerfGeneratedSharedModule, KerfLanguageMetaData } from './generated/module';
import { lowerRuns } from './lowering/lower-file';
import { MeasuredRuns } from './lowering/measured-runs';
import { KerfDescriptions } from './names/descriptions';
import { KerfLinker } from './names/linker';
import { KerfReferenceDescriptions } from './names/reference-descriptions';
import { KerfReferences } from './names/references';
import { KerfScopeComputation } from './names/scope-computation';
import { KerfScopeProvider } from './names/scope-provider';
import { UsedFiles } from './names/used-files';
import { type Outside, outsideServices } from './outside';
import { KerfErrorNames } from './parsing/error-names';
import { sharedLexer, sharedParser } from './parsing/shared-parser';
import { KerfTokenBuilder } from './parsing/token-builder';
import { KerfValueConverter } from './parsing/value-converter';
import { KerfInlayHints } from './planned/inlay-hints';
import type { KerfAddedServices, KerfServices } from './services';
import { KerfDocumentBuilder } from './workspace/document-builder';
import { KerfDocumentFactory } from './workspace/document-factory';
import { KerfDocuments } from './workspace/documents';
import { KerfFileOperations } from './workspace/file-operations';
import { KerfLanguageServer } from './workspace/language-server';
import { KerfUpdateHandler } from './workspace/update-handler';
import { KerfValidator } from './workspace/validator';
import { VirtualTexts } from './workspace/virtual-texts';
import { KerfWorkspaceManager } from './workspace/workspace-manager';

const languageModule: Module<KerfServices, DeepPartial<LangiumServices> & Omit<KerfAddedServices, 'outside'>> = {
    // The grammar is checked for ambiguities by a test, not anew at every start.
    LanguageMetaData: () => ({ ...KerfLanguageMetaData, mode: 'production' }),
    names: {
        UsedFiles: (services) => new UsedFiles(services.shared),
        MeasuredRuns: (services) => new MeasuredRuns(services.shared, (document) => lowerRuns(document, services)),
    },
    parser: {
        GrammarConfig: (services) => ({ ...createGrammarConfig(services), multilineCommentRules: ['BLOCK_COMMENT'] }),
        // One token decides everywhere; more would only cost time on broken text.
        ParserConfig: () => ({ maxLookahead: 1 }),
        TokenBuilder: () => new KerfTokenBuilder(),
        Lexer: (services) => sharedLexer(services),
        ValueConverter: () => new KerfValueConverter(),
        ParserErrorMessageProvider: () => new KerfErrorNames(),
        LangiumParser: (services) => sharedParser(services),
    },
    references: {
        Linker: (services) => new KerfLinker(services),
        ScopeComputation: (services) => new KerfScopeComputation(services),
        References: (services) => new KerfReferences(services),
        ScopeProvider: (services) => new KerfScopeProvider(services),
    },
    lsp: {
        CompletionProvider: (services) => new KerfCompletion(services),
        CodeActionProvider: (services) => new KerfCodeActions(services),
        CodeLensProvider: (services) => new KerfCodeLenses(services),
        DefinitionProvider: (services) => new KerfDefinition(services),
        DocumentLinkProvider: () => new KerfDocumentLinks(),
        DocumentHighlightProvider: (services) => new KerfHighlights(services),
        DocumentSymbolProvider: (services) => new KerfOutline(services),
        FoldingRangeProvider: (services) => new KerfFolding(services),
        Formatter: (services) => new KerfFormatter(services),
        HoverProvider: (services) => new KerfHover(services),
        InlayHintProvider: (services) => new KerfInlayHints(services),
        RenameProvider: (services) => new KerfRename(services),
        SignatureHelp: (services) => new KerfSignatureHelp(services),
        TypeHierarchyProvider: (services) => new KerfTypeHierarchy(services),
        SemanticTokenProvider: (services) => new KerfSemanticTokens(services),
    },
    workspace: {
        AstNodeDescriptionProvider: (services) => new KerfDescriptions(services),
        ReferenceDescriptionProvider: (services) => new KerfReferenceDescriptions(services),
    },
    validation: {
        DocumentValidator: (services) => new KerfValidator(services),
    },
};

/**
 * The language's services, for Node and for a browser worker alike. The file system and, in a
 * language server, the connection come in through `context`; nothing here reads a file by itself.
 * What else the language cannot know is told in `outside`.
 */
export function createKerfServices(
    context: DefaultSharedModuleContext,
    outside: Outside = {},
): { shared: LangiumSharedServices; kerf: KerfServices } {
    const sharedModule: Module<LangiumSharedServices, DeepPartial<LangiumSharedServices>> = {
        lsp: {
            ...(outside.commands !== undefined && { ExecuteCommandHandler: () => outside.commands! }),
            FuzzyMatcher: () => new NameMatcher(),
            DocumentUpdateHandler: (services) => new KerfUpdateHandler(services),
            FileOperationHandler: (services) => new KerfFileOperations(services),
            LanguageServer: (services) => new KerfLanguageServer(services),
            TextDocumentContentProvider: () => new VirtualTexts(() => kerf.outside),
            NodeKindProvider: () => new KerfNodeKinds(),
            WorkspaceSymbolProvider: (services) => new KerfWorkspaceSymbols(services),
        },
        workspace: {
            DocumentBuilder: (services) => new KerfDocumentBuilder(services, () => kerf.names.UsedFiles),
            LangiumDocumentFactory: (services) => new KerfDocumentFactory(services),
            LangiumDocuments: (services) => new KerfDocuments(services),
            WorkspaceManager: (services) => new KerfWorkspaceManager(services),
        },
    };
    const shared = inject(createDefaultSharedModule(context), KerfGeneratedSharedModule, sharedModule);
    const kerf: KerfServices = inject(createDefaultModule({ shared }), KerfGeneratedModule, languageModule, {
        outside: () => outsideServices(outside),
    });
    shared.ServiceRegistry.register(kerf);
    return { shared, kerf };
}
