import {
    AstUtils,
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
import { isFile, type Run } from '../generated/ast';
import { isInFolderOf, runsAndRecipesOf } from '../names/runs-in-sight';
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
    /** Where runs stand or have stood, by address: of a file that is gone nothing else is known any more. */
    private readonly filesWithRuns = new Map<string, { readonly uri: URI; readonly days: ReadonlySet<string> }>();

    constructor(services: LangiumSharedServices, usedFiles: () => UsedFiles) {
        super(services);
        this.usedFiles = usedFiles;
        this.workspace = services.workspace;
    }

    /**
     * A name can only come from a file that is used, so an edit matters to those who use it, directly
     * or through others, and to nobody else, however many names they are still missing. Runs alone reach further: they
     * count for a recipe in a folder above theirs, and take its names.
     */
    protected override shouldRelink(document: LangiumDocument, changed: Set<string>): boolean {
        if (this.uses(document, changed)) return true;
        const { runs, recipes } = runsAndRecipesOf(document);
        if (recipes.length > 0 && this.hasHeldRuns(document, changed)) return true;
        if (runs.length === 0 || document.state < DocumentState.Linked) return false;
        return runs.some((run) => this.isOfChanged(run, document, changed)) || this.meetsChanged(runs, changed);
    }

    private uses(document: LangiumDocument, changed: ReadonlySet<string>): boolean {
        return this.usedFiles()
            .of(document)
            .some((used) => changed.has(used.uri.toString()));
    }

    private hasHeldRuns(home: LangiumDocument, changed: ReadonlySet<string>): boolean {
        for (const address of changed) {
            const known = this.filesWithRuns.get(address);
            if (known !== undefined && isInFolderOf(known.uri, home.uri)) return true;
        }
        return false;
    }

    private isOfChanged(run: Run, document: LangiumDocument, changed: ReadonlySet<string>): boolean {
        const recipe = run.recipe?.ref;
        // Not what the node says: the tree of a file that is gone still knows it.
        const home = recipe && AstUtils.getDocument(recipe);
        return home !== undefined && home !== document && (changed.has(home.uri.toString()) || this.uses(home, changed));
    }

    /** Whether a run of the same day stood in a file that is another now: the same run twice is said at one of them. */
    private meetsChanged(runs: readonly Run[], changed: ReadonlySet<string>): boolean {
        for (const address of changed) {
            const days = this.filesWithRuns.get(address)?.days;
            if (days !== undefined && runs.some((run) => days.has(dayKey(run)))) return true;
        }
        return false;
    }

    /** Files that were not in each other's sight before these were read: recipes above new runs, and runs of new recipes. */
    private newlySeen(read: readonly LangiumDocument[]): LangiumDocument[] {
        const fresh = new Set(read);
        const withRuns: LangiumDocument[] = [];
        const withRecipes: LangiumDocument[] = [];
        const newDays = new Set<string>();
        for (const document of read) {
            const { runs, recipes } = runsAndRecipesOf(document);
            if (runs.length > 0) {
                withRuns.push(document);
                const days = new Set(runs.map(dayKey));
                for (const day of days) newDays.add(day);
                this.filesWithRuns.set(document.uri.toString(), { uri: document.uri, days });
            }
            if (recipes.length > 0) withRecipes.push(document);
        }
        if (withRuns.length === 0 && (withRecipes.length === 0 || this.filesWithRuns.size === 0)) return [];
        return this.langiumDocuments.all
            .filter((document) => {
                if (fresh.has(document) || document.state < DocumentState.ComputedScopes) return false;
                const { runs, recipes } = runsAndRecipesOf(document);
                const above = recipes.length > 0 && withRuns.some(({ uri }) => isInFolderOf(uri, document.uri));
                return (
                    above ||
                    runs.some((run) => newDays.has(dayKey(run))) ||
                    withRecipes.some((home) => isInFolderOf(document.uri, home.uri) && mayMean(runs, home))
                );
            })
            .toArray();
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
            const changed = [...documents, ...read].filter(({ state }) => state < DocumentState.IndexedContent);
            const seen = this.newlySeen(changed).filter((each) => !documents.includes(each));
            for (const each of seen) this.resetToState(each, DocumentState.ComputedScopes);
            this.prepareBuild([...read, ...seen], this.options);
            documents.push(...read, ...seen);
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

function mayMean(runs: readonly Run[], home: LangiumDocument): boolean {
    const names = new Set(runsAndRecipesOf(home).recipes.map(({ name }) => name));
    return runs.some(({ recipe }) => recipe !== undefined && names.has(recipe.$refText));
}

function dayKey({ recipe, date }: Run): string {
    return `${recipe?.$refText ?? ''} ${date ?? ''}`;
}
