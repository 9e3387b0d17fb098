import * as vscode from 'vscode';
import { requests } from '../../shared/view/requests';
import type { RecipeServer } from '../server';

/** The editor begins to watch a folder some time after it was asked to, and does not say when, ms: what happened before is looked for by then. */
const SETTLING_MS = [1000, 3000, 8000];

/**
 * Says when a revision of a file may have come to mean another commit: after a commit, a checkout, a reset, a
 * fetch. The editor watches the few places where git keeps that; nothing is asked of git until one of them changes.
 */
export class RevisionWatch implements vscode.Disposable {
    private readonly watchers: vscode.Disposable[] = [];
    private readonly timers: ReturnType<typeof setTimeout>[] = [];
    private known = '';
    private state: 'idle' | 'asking' | 'watching' | 'over' = 'idle';

    constructor(
        private readonly server: RecipeServer,
        private readonly uri: string,
        private readonly changed: () => void,
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
        for (const { folder, pattern } of places) {
            const watcher = vscode.workspace.createFileSystemWatcher(
                new vscode.RelativePattern(vscode.Uri.parse(folder), pattern),
            );
            this.watchers.push(
                watcher,
                watcher.onDidCreate(this.changed),
                watcher.onDidChange(this.changed),
                watcher.onDidDelete(this.changed),
            );
        }
    }

    /** A change from before the watchers stood. */
    private async lookAgain(): Promise<void> {
        const answer = await this.server.ask(requests.revisionPlaces, { uri: this.uri });
        if (this.state !== 'watching' || answer === undefined || 'problem' in answer || answer.now === this.known) return;
        this.known = answer.now;
        this.changed();
    }

    dispose(): void {
        this.state = 'over';
        for (const timer of this.timers) clearTimeout(timer);
        for (const each of this.watchers) each.dispose();
    }
}
