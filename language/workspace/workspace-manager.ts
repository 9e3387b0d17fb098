import {
    DefaultWorkspaceManager,
    type LangiumDocument,
    type LangiumDocumentFactory,
    type Stream,
    URI,
    type WorkspaceFolder,
} from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import { builtInText, builtInUris } from '../built-in';

/** Adds the built-in stock to the documents before the workspace's own files are read. */
export class KerfWorkspaceManager extends DefaultWorkspaceManager {
    private readonly factory: LangiumDocumentFactory;

    constructor(services: LangiumSharedServices) {
        super(services);
        this.factory = services.workspace.LangiumDocumentFactory;
    }

    /** A file that cannot be read is left out; the others are still there. */
    protected override async loadWorkspaceDocuments(
        uris: Stream<URI>,
        collector: (document: LangiumDocument) => void,
    ): Promise<void> {
        await Promise.all(
            uris.map(async (uri) => {
                const document = await this.langiumDocuments.getOrCreateDocument(uri).catch(() => undefined);
                if (document !== undefined) collector(document);
            }),
        );
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
