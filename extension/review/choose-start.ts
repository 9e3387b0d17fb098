import * as vscode from 'vscode';
import { dayOf, daysSince1970, momentOf } from '../../shared/quantity/calendar';

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

/** The first and the last day of a season; neither where nothing is written, undefined where somebody thought better of it. */
export async function chooseDays(): Promise<{ readonly from?: string; readonly to?: string } | undefined> {
    const prompt = vscode.l10n.t('First and last day: 2026-01-01 2026-12-31. One day alone: from that day on. Empty: all runs');
    const written = await vscode.window.showInputBox({
        title: vscode.l10n.t('The season: first and last day'),
        prompt,
        value: `${dayOf(new Date()).slice(0, 4)}-01-01`,
        validateInput: (text) => (daysIn(text) === undefined ? prompt : undefined),
    });
    return written === undefined ? undefined : daysIn(written);
}

function daysIn(text: string): { from?: string; to?: string } | undefined {
    const days = text
        .trim()
        .split(/[\s,]+/)
        .filter((day) => day !== '');
    if (days.length > 2 || days.some((day) => day.length !== 10 || daysSince1970(day) === undefined)) return undefined;
    const [from, to] = days;
    return { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}
