import { type DeepPartial, inject, type Module } from 'langium';
import {
    createDefaultModule,
    createDefaultSharedModule,
    type DefaultSharedModuleContext,
    type LangiumServices,
    type LangiumSharedServices,
} from 'langium/lsp';
import { KerfGeneratedModule, KerfGeneratedSharedModule, KerfLanguageMetaData } from './generated/module';
import { KerfScopeComputation } from './names/scope-computation';
import { KerfScopeProvider } from './names/scope-provider';
import { UsedFiles } from './names/used-files';
import { KerfDocumentBuilder } from './workspace/document-builder';
import { KerfValidator } from './workspace/validator';
import { KerfWorkspaceManager } from './workspace/workspace-manager';

/** What the language has beyond Langium's own services. */
export interface KerfAddedServices {
    readonly names: {
        /** Which files a document sees through `use`. */
        readonly UsedFiles: UsedFiles;
    };
}

export type KerfServices = LangiumServices & KerfAddedServices;

const languageModule: Module<KerfServices, DeepPartial<LangiumServices> & KerfAddedServices> = {
    // The grammar is checked for ambiguities by a test, not anew at every start.
    LanguageMetaData: () => ({ ...KerfLanguageMetaData, mode: 'production' }),
    names: {
        UsedFiles: (services) => new UsedFiles(services.shared),
    },
    references: {
        ScopeComputation: (services) => new KerfScopeComputation(services),
        ScopeProvider: (services) => new KerfScopeProvider(services),
    },
    validation: {
        DocumentValidator: (services) => new KerfValidator(services),
    },
};

/**
 * The language's services, for Node and for a browser worker alike. The file system and, in a
 * language server, the connection come in through `context`; nothing here reads a file by itself.
 */
export function createKerfServices(context: DefaultSharedModuleContext): { shared: LangiumSharedServices; kerf: KerfServices } {
    const sharedModule: Module<LangiumSharedServices, DeepPartial<LangiumSharedServices>> = {
        workspace: {
            DocumentBuilder: (services) => new KerfDocumentBuilder(services, () => kerf.names.UsedFiles),
            WorkspaceManager: (services) => new KerfWorkspaceManager(services),
        },
    };
    const shared = inject(createDefaultSharedModule(context), KerfGeneratedSharedModule, sharedModule);
    const kerf: KerfServices = inject(createDefaultModule({ shared }), KerfGeneratedModule, languageModule);
    shared.ServiceRegistry.register(kerf);
    return { shared, kerf };
}
