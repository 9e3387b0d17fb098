import {
    delayNextTick,
    type FileSystemProvider,
    type LangiumDocumentFactory,
    type LangiumDocuments,
    URI,
    type WorkspaceLock,
} from 'langium';
import { DefaultDocumentUpdateHandler, type LangiumSharedServices, type TextDocuments } from 'langium/lsp';
import {
    type DidChangeWatchedFilesParams,
    FileChangeType,
    type FileSystemWatcher,
    type TextDocumentChangeEvent,
} from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { isRecipeFile } from '../names/used-files';
import type { KerfDocumentBuilder } from './document-builder';

/** Changes closer together than this, in milliseconds, are read as one: pasted, repeated or composed, not typed key by key. */
const pause = 30;
/** A burst is read after so long (ms) though it goes on, so that whoever asks has an answer before it ends. */
const longestBurst = 400;

/** Reads the text at each keystroke, a burst of them when it pauses, and watches recipes and art only. */
export class KerfUpdateHandler extends DefaultDocumentUpdateHandler {
    private readonly pending = new Map<string, URI>();
    private readonly lock: WorkspaceLock;
    private readonly builder: KerfDocumentBuilder;
    private readonly documents: LangiumDocuments;
    private readonly factory: LangiumDocumentFactory;
    private readonly open: TextDocuments<TextDocument>;
    private readonly files: FileSystemProvider;
    /** Grows with every change: only after the latest is anything read. */
    private changes = 0;
    private lastChange = Number.NEGATIVE_INFINITY;
    private burstBegan = Number.NEGATIVE_INFINITY;

    constructor(services: LangiumSharedServices) {
        super(services);
        this.lock = services.workspace.WorkspaceLock;
        this.builder = services.workspace.DocumentBuilder as KerfDocumentBuilder;
        this.documents = services.workspace.LangiumDocuments;
        this.factory = services.workspace.LangiumDocumentFactory;
        this.open = services.workspace.TextDocuments;
        this.files = services.workspace.FileSystemProvider;
    }

    override didChangeContent({ document }: TextDocumentChangeEvent<TextDocument>): void {
        const uri = URI.parse(document.uri);
        this.pending.set(uri.toString(), uri);
        // Questions about the text wait from now on; what is being built is out of date.
        this.lock.cancelWrite();
        // A file that is not on disk yet can be asked about as soon as it is open.
        if (!this.documents.hasDocument(uri)) this.documents.addDocument(this.factory.fromTextDocument(document, uri));
        this.builder.expectUpdate(uri);
        const now = performance.now();
        let burst = now - this.lastChange < pause;
        if (!burst) this.burstBegan = now;
        else if (now - this.burstBegan > longestBurst) {
            burst = false;
            this.burstBegan = now;
        }
        this.lastChange = now;
        const mine = ++this.changes;
        void (burst ? paused() : arrived()).then(() => {
            if (mine !== this.changes) return;
            const changed = [...this.pending.values()];
            this.pending.clear();
            this.fireDocumentUpdate(changed, []);
        });
    }

    /** A closed file is what the disk says it is: unsaved changes are gone. */
    didCloseDocument({ document }: TextDocumentChangeEvent<TextDocument>): void {
        const uri = URI.parse(document.uri);
        void this.files.exists(uri).then((there) => {
            // Opened anew meanwhile, it is what the editor says again.
            if (this.open.get(document.uri) !== undefined) return;
            this.fireDocumentUpdate(there ? [uri] : [], there ? [] : [uri]);
        });
    }

    override didChangeWatchedFiles(params: DidChangeWatchedFilesParams): void {
        this.onWatchedFilesChangeEmitter.fire(params);
        const changed: URI[] = [];
        const deleted: URI[] = [];
        for (const { uri, type } of params.changes) {
            const parsed = URI.parse(uri);
            if (!isRecipeFile(parsed)) continue;
            if (this.open.get(uri) !== undefined) continue; // an open file is what the editor says it is, and there as long as it is open
            if (type === FileChangeType.Deleted) deleted.push(parsed);
            else changed.push(parsed);
        }
        if (changed.length + deleted.length > 0) this.fireDocumentUpdate(changed, deleted);
    }

    protected override getWatchers(): FileSystemWatcher[] {
        return [{ globPattern: '**/*.kerf' }, { globPattern: '**/*.{svg,png,jpg,jpeg}' }];
    }
}

function paused(): Promise<void> {
    return new Promise((resolve) => setTimeout(resolve, pause));
}

/** Once the messages that are here already have been read: each takes a turn, and the next one is asked for behind ours. */
async function arrived(): Promise<void> {
    await delayNextTick();
    await delayNextTick();
}
