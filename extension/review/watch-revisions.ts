import * as vscode from 'vscode';
import { requests } from '../../shared/view/requests';
import type { RecipeServer } from '../server';

/** The editor begins to watch a folder some time after it was asked to, and does not say when, ms: what happened before is looked for by then. */
const SETTLING_MS = [1000, 3000, 8000];
/** How often git's own logbook is looked at, ms: where much is written at once, the editor loses changes in a folder that it watches. */
const LOGBOOK_MS = 2000;

/**
 * Says when a revision of a file may have come to mean another commit: after a commit, a checkout, a reset, a
 * fetch. The editor watches the few places where git keeps that; nothing is asked of git until one of them changes.
 */
export class RevisionWatch implements vscode.Disposable {
    private readonly watchers: vscode.Disposable[] = [];
    private readonly timers: ReturnType<typeof setTimeout>[] = [];
    private known = '';
    /** Each commit, checkout and reset is written down here (gitrepository-layout(5), logs/HEAD). */
    private logbooks: vscode.Uri[] = [];
    private written = '';
    private interval: ReturnType<typeof setInterval> | undefined;
    private state: 'idle' | 'asking' | 'watching' | 'over' = 'idle';

    constructor(
        private readonly server: RecipeServer,
        private readonly uri: string,
        private readonly changed: () => void,
        private readonly isSeen: () => boolean,
    ) {}

    /** Begins to watch, unless it does so already. Where there is no repository yet, the next call looks again. */
    async begin(): Promise<void> {
        if (this.state !== 'idle' || !vscode.workspace.isTrusted) return;
        this.state = 'asking';
        const answer = await this.server.ask(requests.revisionPlaces, { uri: this.uri });
        // It may have been given up meanwhile.
        if (this.state !== 'asking') return;
        const { places, now } = answer === undefined || 'problem' in answer ? { places: [], now: '' } : answer;
        this.state = places.length === 0 ? 'idle' : 'watching';
        if (this.state === 'idle') return;
        this.known = now;
        for (const wait of SETTLING_MS) this.timers.push(setTimeout(() => void this.lookAgain(), wait));
        this.logbooks = [...new Set(places.map(({ folder }) => `${folder.replace(/\/(refs|reftable)$/, '')}/logs/HEAD`))].map(
            (uri) => vscode.Uri.parse(uri),
        );
        this.written = await this.lastWritten();
        if (this.isOver) return;
        this.interval = setInterval(() => void this.lookIntoLogbooks(), LOGBOOK_MS);
        for (const { folder, pattern } of places) {
            const watcher = vscode.workspace.createFileSystemWatcher(
                new vscode.RelativePattern(vscode.Uri.parse(folder), pattern),
            );
            this.watchers.push(
                watcher,
                watcher.onDidCreate(this.seen),
                watcher.onDidChange(this.seen),
                watcher.onDidDelete(this.seen),
            );
        }
    }

    private readonly seen = (): void => {
        this.changed();
        void this.lastWritten().then((written) => {
            this.written = written;
        });
    };

    private async lookIntoLogbooks(): Promise<void> {
        if (!this.isSeen()) return;
        const written = await this.lastWritten();
        if (written === this.written || this.isOver) return;
        this.written = written;
        this.changed();
    }

    private async lastWritten(): Promise<string> {
        const times = this.logbooks.map(async (uri) => {
            try {
                const { mtime, size } = await vscode.workspace.fs.stat(uri);
                return `${mtime} ${size}`;
            } catch {
                return ''; // a repository that keeps no logbook
            }
        });
        return (await Promise.all(times)).join();
    }

    /** A change from before the watchers stood. */
    private async lookAgain(): Promise<void> {
        const answer = await this.server.ask(requests.revisionPlaces, { uri: this.uri });
        if (this.state !== 'watching' || answer === undefined || 'problem' in answer || answer.now === this.known) return;
        this.known = answer.now;
        this.changed();
    }

    private get isOver(): boolean {
        return this.state === 'over';
    }

    dispose(): void {
        this.state = 'over';
        for (const timer of this.timers) clearTimeout(timer);
        clearInterval(this.interval);
        for (const each of this.watchers) each.dispose();
    }
}
