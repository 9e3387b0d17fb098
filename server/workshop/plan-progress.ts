import type { Connection, WorkDoneProgressServerReporter } from 'vscode-languageserver';
import { refused } from '../protocol/refused';

/** So few are worked out before anybody looks up. */
const unseen = 4;

/** Tells the editor how far the recipes are worked out once many are waiting, and takes its word that enough is enough. */
export class PlanProgress {
    private total = 0;
    private done = 0;
    /** Undefined in the end where the client will show none. */
    private bar: Promise<WorkDoneProgressServerReporter | undefined> | undefined;
    private stopped = false;

    constructor(private readonly connection: Connection) {}

    /** Whether somebody has said stop: files that are not open are then left for later. */
    get isStopped(): boolean {
        return this.stopped;
    }

    async during<T>(work: () => Promise<T>): Promise<T> {
        this.total++;
        if (this.total - this.done > unseen) this.show();
        try {
            return await work();
        } finally {
            this.done++;
            this.tell();
        }
    }

    private show(): void {
        this.bar ??= this.connection.window.createWorkDoneProgress().then((bar) => {
            bar.begin('Working out recipes', 0, undefined, true);
            bar.token.onCancellationRequested(() => {
                this.stopped = true;
            });
            return bar;
        }, refused);
    }

    private tell(): void {
        const [done, total, bar] = [this.done, this.total, this.bar];
        if (done < total) {
            void bar?.then((each) => each?.report((100 * done) / total, `${done} of ${total}`));
            return;
        }
        this.total = 0;
        this.done = 0;
        this.bar = undefined;
        this.stopped = false;
        void bar?.then((each) => each?.done());
    }
}
