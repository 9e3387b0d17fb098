import { OperationCancelled } from 'langium';
import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver';

interface Waiter {
    /** Throws when what is waited for can never come. */
    readonly isReached: () => boolean;
    readonly resolve: () => void;
    readonly reject: (error: unknown) => void;
    /** How often all work was done and it was not reached all the same. */
    vain: number;
}

/** Work that is under way tells by itself that it is done; this is how often it is looked after that it is under way, ms. */
const WATCH_MS = 50;
/** So often all work may end without what somebody waits for before they are told that it will not come. */
const MAX_VAIN = 3;

/** Those who wait for something in the course of builds. Each is told that it has come, that it cannot come, or that they gave up. */
export class Waiters {
    private readonly all = new Set<Waiter>();
    private isPushing = false;

    /** @param finish does what is left to be done; false while that is being done anyway */
    constructor(private readonly finish: () => Promise<boolean>) {}

    until(isReached: () => boolean, token: CancellationToken): Promise<void> {
        return new Promise<void>((resolve, reject) => {
            if (isReached()) {
                resolve();
                return;
            }
            if (token.isCancellationRequested) throw OperationCancelled;
            const waiter: Waiter = {
                isReached,
                vain: 0,
                resolve: () => end(resolve),
                reject: (error) => end(() => reject(error)),
            };
            const listening = token.onCancellationRequested(() => waiter.reject(OperationCancelled));
            const end = (tell: () => void): void => {
                listening.dispose();
                this.all.delete(waiter);
                tell();
            };
            this.all.add(waiter);
            void this.push();
        });
    }

    /** Tells those whose wait is over. */
    look(): void {
        for (const waiter of this.all) {
            try {
                if (waiter.isReached()) waiter.resolve();
            } catch (error) {
                waiter.reject(error);
            }
        }
    }

    /** As long as anybody waits, sees to it that something is being done. */
    private async push(): Promise<void> {
        if (this.isPushing) return;
        this.isPushing = true;
        for (this.look(); this.all.size > 0; this.look()) {
            await rest();
            const before = [...this.all];
            if (!(await this.finish().catch(() => true))) continue;
            this.look();
            for (const waiter of before) {
                if (this.all.has(waiter) && ++waiter.vain >= MAX_VAIN)
                    waiter.reject(new ResponseError(LSPErrorCodes.ContentModified, 'The text was changed meanwhile.'));
            }
        }
        this.isPushing = false;
    }
}

function rest(): Promise<void> {
    return new Promise((resolve) => setTimeout(resolve, WATCH_MS));
}
