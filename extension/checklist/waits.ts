import * as vscode from 'vscode';
import type { TickBook } from './ticks';

/** Stays until it is answered or closed, so that it is seen whenever the maker comes back to the bench. */
async function say(message: string): Promise<void> {
    const choice = await vscode.window.showInformationMessage(message, 'Show Checklist');
    if (choice !== undefined) await vscode.commands.executeCommand('kerfbook.checklist.focus');
}

const LOOK_EVERY = 1000; // ms

/**
 * Says when a wait is over, also one that ended while the editor was closed, and redraws running
 * waits. Each message appears once.
 */
export function announceWaits(book: TickBook, redraw: () => void): vscode.Disposable {
    let running = false;
    const look = () => {
        const now = Date.now();
        for (const { job, tick } of book.takeOverdue(now)) {
            if (!vscode.workspace.getConfiguration('kerfbook.checklist').get('announceWaits', true)) continue;
            const recipe = job.slice(job.lastIndexOf('#') + 1);
            void say(`${recipe}: “${tick.label}” is over since ${new Date(tick.ends!).toLocaleString()}.`);
        }
        const waiting = book.isWaiting(now);
        if (waiting || running) redraw(); // once more after the last has ended
        running = waiting;
    };
    look();
    const timer = setInterval(look, LOOK_EVERY);
    return new vscode.Disposable(() => clearInterval(timer));
}
