import { type DeepPartial, inject, type Module } from 'langium';
import {
    createDefaultModule,
    createDefaultSharedModule,
    type DefaultSharedModuleContext,
    type LangiumServices,
    type LangiumSharedServices,
} from 'langium/lsp';
import { KerfCodeActions } from './editing/code-actions';
import { KerfCompletion } from './editor/completion';
import { KerfHover } from './editor/hover';
import { KerfGeneratedModule, KerfGeneratedSharedModule, KerfLanguageMetaData } from './generated/module';
import { KerfScopeComputation } from './names/scope-computation';
import { KerfScopeProvider } from './names/scope-provider';
import { UsedFiles } from './names/used-files';
import { type Outside, type OutsideServices, outsideServices } from './outside';
import { KerfErrorNames } from './parsing/error-names';
import { KerfLexer } from './parsing/lexer';
import { createKerfParser } from './parsing/recovery';
import { KerfTokenBuilder } from './parsing/token-builder';
import { KerfValueConverter } from './parsing/value-converter';
import { KerfDocumentBuilder } from './workspace/document-builder';
import { KerfValidator } from './workspace/validator';
import { KerfWorkspaceManager } from './workspace/workspace-manager';

/** What the language has beyond Langium's own services. */
export interface KerfAddedServices {
    readonly names: {
        /** Which files a document sees through `use`. */
        readonly UsedFiles: UsedFiles;
    };
    readonly outside: OutsideServices;
}

export type KerfServices = LangiumServices & KerfAddedServices;

const languageModule: Module<KerfServices, DeepPartial<LangiumServices> & Omit<KerfAddedServices, 'outside'>> = {
    // The grammar is checked for ambiguities by a test, not anew at every start.
    LanguageMetaData: () => ({ ...KerfLanguageMetaData, mode: 'production' }),
    names: {
        UsedFiles: (services) => new UsedFiles(services.shared),
    },
    parser: {
        // One token decides everywhere; more would only cost time on broken text.
        ParserConfig: () => ({ maxLookahead: 1 }),
        TokenBuilder: () => new KerfTokenBuilder(),
        Lexer: (services) => new KerfLexer(services),
        ValueConverter: () => new KerfValueConverter(),
        ParserErrorMessageProvider: () => new KerfErrorNames(),
        LangiumParser: (services) => createKerfParser(services),
    },
    references: {
        ScopeComputation: (services) => new KerfScopeComputation(services),
        ScopeProvider: (services) => new KerfScopeProvider(services),
    },
    lsp: {
        CompletionProvider: (services) => new KerfCompletion(services),
        CodeActionProvider: (services) => new KerfCodeActions(services),
        HoverProvider: (services) => new KerfHover(services),
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
        workspace: {
            DocumentBuilder: (services) => new KerfDocumentBuilder(services, () => kerf.names.UsedFiles),
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
