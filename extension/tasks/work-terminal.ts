import * as vscode from 'vscode';
import { plainText } from '../../shared/review/one-line';

/** Says a line, or several. */
export type Say = (text: string) => void;

/** A task's terminal that shows what work of ours says, and ends with its exit code. */
export class WorkTerminal implements vscode.Pseudoterminal {
    private readonly write = new vscode.EventEmitter<string>();
    private readonly close_ = new vscode.EventEmitter<number>();
    private readonly cancelling = new vscode.CancellationTokenSource();
    readonly onDidWrite = this.write.event;
    readonly onDidClose = this.close_.event;

    /** @param work gives the exit code; 0 when all is well */
    constructor(private readonly work: (say: Say, token: vscode.CancellationToken) => Promise<number>) {}

    open(): void {
        const say: Say = (text) => this.write.fire(`${plainText(text).replaceAll('\n', '\r\n')}\r\n`);
        this.work(say, this.cancelling.token)
            .catch((error: unknown) => {
                say(String(error));
                return 2;
            })
            .then((code) => this.close_.fire(code));
    }

    close(): void {
        this.cancelling.cancel();
    }
}
