import * as vscode from 'vscode';
import { type Overdue, placeOf, type TickBook } from './ticks';

const LOOK_EVERY = 1000; // ms

/**
 * Says when a wait is over, also one that ended while the editor was closed, and redraws running
 * waits. Each message appears once. The editor takes it away after a while, and the maker may be at the
 * bench by then: a bell in the status bar stays until it is answered.
 * @param isThere whether the recipe of a job still is: nothing is said of one that is gone
 * @param show leads to the checklist of a job
 */
export function announceWaits(
    book: TickBook,
    isThere: (job: string) => Promise<boolean>,
    redraw: () => void,
    show: (job: string) => void,
): vscode.Disposable {
    const bell = vscode.window.createStatusBarItem('kerfbook.waits', vscode.StatusBarAlignment.Left, 39);
    bell.name = vscode.l10n.t('Kerfbook Waits');
    bell.command = 'kerfbook.showEndedWaits';

    let drawn: string | undefined;
    /** Waits that are over, of recipes that are there, as last looked up. */
    let unseen: readonly Overdue[] = [];
    const showEnded = (ended: readonly Overdue[]) => {
        book.see(ended);
        unseen = unseen.filter(({ job, id }) => !ended.some((other) => other.job === job && other.id === id));
        drawBell();
        if (ended[0] !== undefined) show(ended[0].job);
    };
    const drawBell = () => {
        const first = unseen[0];
        const text =
            unseen.length > 1
                ? vscode.l10n.t('{0} waits are over', unseen.length)
                : first && vscode.l10n.t('{0}: wait is over', placeOf(first.job).recipe);
        if (text === drawn) return;
        drawn = text;
        if (text === undefined) {
            bell.hide();
            return;
        }
        bell.text = `$(bell) ${text}`;
        bell.tooltip = [...unseen.map(words), vscode.l10n.t('Select to open the checklist')].join('\n');
        bell.accessibilityInformation = { label: vscode.l10n.t('{0} Opens the checklist.', unseen.map(words).join(' ')) };
        bell.show();
    };
    const say = async (ended: Overdue) => {
        if ((await vscode.window.showInformationMessage(words(ended), vscode.l10n.t('Show Checklist'))) !== undefined)
            showEnded([ended]);
    };

    let running = false;
    let looking = false;
    const look = async () => {
        if (looking) return;
        looking = true;
        const now = Date.now();
        const waiting = book.isWaiting(now);
        if (waiting || running) redraw(); // once more after the last has ended
        running = waiting;
        const there = new Set<string>();
        for (const job of book.jobsOver(now)) if (await isThere(job)) there.add(job);
        for (const ended of book.takeOverdue(now, (job) => there.has(job))) {
            if (vscode.workspace.getConfiguration('kerfbook.checklist').get('announceWaits', true)) void say(ended);
        }
        unseen = book.unseen(now).filter(({ job }) => there.has(job));
        drawBell();
        looking = false;
    };
    void look();
    const timer = setInterval(() => void look(), LOOK_EVERY);
    return vscode.Disposable.from(
        bell,
        new vscode.Disposable(() => clearInterval(timer)),
        vscode.commands.registerCommand('kerfbook.showEndedWaits', () => {
            showEnded(unseen.filter(({ job }) => job === unseen[0]?.job));
        }),
    );
}

function words({ job, tick }: Overdue): string {
    const reason = tick.reason === undefined ? '' : ` (${tick.reason})`;
    return vscode.l10n.t(
        '{0}: “{1}”{2} is over since {3}.',
        placeOf(job).recipe,
        tick.label,
        reason,
        new Date(tick.ends!).toLocaleString(),
    );
}
