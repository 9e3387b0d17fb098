import * as vscode from 'vscode';
import { dayOf, momentOf } from '../../shared/quantity/calendar';

/** When the first day begins, `2026-12-01T08:00`; undefined where somebody thought better of it. A day alone begins at eight. */
export async function chooseStart(): Promise<string | undefined> {
    const written = await vscode.window.showInputBox({
        title: vscode.l10n.t('The week: first working day'),
        prompt: vscode.l10n.t('A day, or a day and a time: 2026-11-26T07:30'),
        value: dayOf(new Date()),
        validateInput: (text) =>
            momentOf(text) === undefined ? vscode.l10n.t('A day, or a day and a time: 2026-11-26T07:30') : undefined,
    });
    if (written === undefined) return undefined;
    const plain = written.trim().replace(' ', 'T');
    return plain.includes('T') ? plain.slice(0, 16) : `${plain}T08:00`;
}
