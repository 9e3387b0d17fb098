import {
    type BuildOptions,
    DefaultDocumentBuilder,
    DocumentState,
    type LangiumDocument,
    type MaybePromise,
    type URI,
} from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import type { CancellationToken } from 'vscode-languageserver';
import { isFile } from '../generated/ast';
import { isRecipeFile, type UsedFiles, usedUri } from '../names/used-files';

/** Reads what a file uses even where it lies outside the workspace, and relinks only files that can see an edit. */
export class KerfDocumentBuilder extends DefaultDocumentBuilder {
    private readonly usedFiles: () => UsedFiles;
    private options: BuildOptions = {};

    constructor(services: LangiumSharedServices, usedFiles: () => UsedFiles) {
        super(services);
        this.usedFiles = usedFiles;
    }

    /**
     * A name can only come from a file that is used, so an edit matters to those who use it, directly
     * or through others, and to nobody else, however many names they are still missing.
     */
    protected override shouldRelink(document: LangiumDocument, changed: Set<string>): boolean {
        return this.usedFiles()
            .of(document)
            .some((used) => changed.has(used.uri.toString()));
    }

    /** A newer text is on its way: whoever asks about this document waits until it has been read. */
    expectUpdate(uri: URI): void {
        const document = this.langiumDocuments.getDocument(uri);
        if (document !== undefined) document.state = DocumentState.Changed;
        this.currentState = DocumentState.Changed;
    }

    protected override buildDocuments(
        documents: LangiumDocument[],
        options: BuildOptions,
        token: CancellationToken,
    ): Promise<void> {
        this.options = options;
        return super.buildDocuments(documents, options, token);
    }

    /** Between parsing and linking, the files that were just found to be used join the same build. */
    protected override async runCancelable(
        documents: LangiumDocument[],
        target: DocumentState,
        token: CancellationToken,
        run: (document: LangiumDocument) => MaybePromise<unknown>,
    ): Promise<void> {
        if (target === DocumentState.IndexedContent) {
            const read = await this.readUsed(documents);
            this.prepareBuild(read, this.options);
            documents.push(...read);
        }
        await super.runCancelable(documents, target, token, run);
    }

    private async readUsed(documents: readonly LangiumDocument[]): Promise<LangiumDocument[]> {
        const read: LangiumDocument[] = [];
        const pending = [...documents];
        for (let document = pending.pop(); document !== undefined; document = pending.pop()) {
            const file = document.parseResult.value;
            if (!isFile(file)) continue;
            for (const use of file.uses) {
                const uri = usedUri(use, document.uri);
                if (uri === undefined || !isRecipeFile(uri) || this.langiumDocuments.hasDocument(uri)) continue;
                const used = await this.readIfThere(uri);
                if (used === undefined) continue;
                read.push(used);
                pending.push(used);
            }
        }
        this.usedFiles().forget();
        return read;
    }

    private async readIfThere(uri: URI): Promise<LangiumDocument | undefined> {
        try {
            return await this.langiumDocuments.getOrCreateDocument(uri);
        } catch {
            return undefined; // missing or unreadable: the text's findings say so at the statement
        }
    }
}
