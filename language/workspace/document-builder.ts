import {
    type BuildOptions,
    DefaultDocumentBuilder,
    DocumentState,
    interruptAndCheck,
    type LangiumDocument,
    type MaybePromise,
    OperationCancelled,
    type URI,
} from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import { CancellationToken } from 'vscode-languageserver';
import { isFile } from '../generated/ast';
import { isRecipeFile, type UsedFiles, usedUri } from '../names/used-files';
import { UnknownFile } from './unknown-file';
import { Waiters } from './waiters';

/**
 * Reads what a file uses even where it lies outside the workspace, relinks only files that can see an edit, and
 * forgets nobody who waits: a build that is cancelled tells nobody how far it came, so each is looked after here.
 */
export class KerfDocumentBuilder extends DefaultDocumentBuilder {
    private readonly usedFiles: () => UsedFiles;
    private readonly workspace: LangiumSharedServices['workspace'];
    private options: BuildOptions = {};
    /** Addresses of files of which a newer text has come that is not being read yet. */
    private readonly expected = new Set<string>();
    private readonly waiters = new Waiters(() => this.finish());
    private running = 0;

    constructor(services: LangiumSharedServices, usedFiles: () => UsedFiles) {
        super(services);
        this.usedFiles = usedFiles;
        this.workspace = services.workspace;
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
        this.expected.add(uri.toString());
    }

    override async update(changed: URI[], deleted: URI[], token: CancellationToken = CancellationToken.None): Promise<void> {
        for (const uri of [...changed, ...deleted]) this.expected.delete(uri.toString());
        await this.counted(() => super.update(changed, deleted, token));
    }

    override async build(
        documents: LangiumDocument[],
        options: BuildOptions = {},
        token: CancellationToken = CancellationToken.None,
    ): Promise<void> {
        await this.counted(() => super.build(documents, options, token));
    }

    private async counted(work: () => Promise<void>): Promise<void> {
        this.running++;
        try {
            await work();
        } finally {
            this.running--;
            this.waiters.look();
        }
    }

    protected override cleanUpDeleted(document: LangiumDocument): void {
        super.cleanUpDeleted(document);
        this.expected.delete(document.uri.toString());
    }

    protected override awaitDocumentState(state: DocumentState, uri: URI, token: CancellationToken): Promise<URI> {
        const address = uri.toString();
        const isReached = (): boolean => {
            const document = this.langiumDocuments.getDocument(uri);
            if (document !== undefined) return document.state >= state && !this.expected.has(address);
            // What an editor has open is read in a moment.
            if (this.textDocuments?.get(address) === undefined) throw new UnknownFile(address);
            return false;
        };
        return this.waiters.until(isReached, token).then(() => uri);
    }

    protected override awaitBuilderState(state: DocumentState, token: CancellationToken): Promise<void> {
        return this.waiters.until(() => this.currentState >= state && this.expected.size === 0, token);
    }

    /**
     * Brings everything as far as it can come, for somebody who waits though nothing is being done: of what was
     * read without being checked, say. False while work that was begun, or is about to begin, may still do it.
     */
    private async finish(): Promise<boolean> {
        await this.workspace.WorkspaceManager.ready;
        if (this.running > 0 || this.expected.size > 0) return false;
        await this.workspace.WorkspaceLock.write((token) => this.update([], [], token));
        return true;
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
        for (const document of documents) {
            if (document.state >= target) continue;
            await interruptAndCheck(token);
            await run(document);
            // A newer text came meanwhile: this is as far as the old one has come, and nobody is to see it as the new.
            if (this.expected.has(document.uri.toString())) throw OperationCancelled;
            document.state = target;
            this.waiters.look();
            await this.notifyDocumentPhase(document, target, token);
        }
        await this.notifyBuildPhase(
            documents.filter(({ state }) => state === target),
            target,
            token,
        );
        if (this.expected.size > 0) throw OperationCancelled;
        this.currentState = target;
        this.waiters.look();
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
