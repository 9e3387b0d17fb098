import { DefaultWorkspaceManager, type LangiumDocument, type LangiumDocumentFactory, URI, type WorkspaceFolder } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import { builtInText, builtInUris } from '../built-in';

/** Adds the built-in stock to the documents before the workspace's own files are read. */
export class KerfWorkspaceManager extends DefaultWorkspaceManager {
    private readonly factory: LangiumDocumentFactory;

    constructor(services: LangiumSharedServices) {
        super(services);
        this.factory = services.workspace.LangiumDocumentFactory;
    }

    protected override async loadAdditionalDocuments(
        _folders: WorkspaceFolder[],
        collector: (document: LangiumDocument) => void,
    ): Promise<void> {
        for (const uri of builtInUris) {
            const parsed = URI.parse(uri);
            collector(this.langiumDocuments.getDocument(parsed) ?? this.factory.fromString(builtInText(uri) ?? '', parsed));
        }
    }
}
