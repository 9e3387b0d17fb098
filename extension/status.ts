import * as vscode from 'vscode';
import { showTime } from '../shared/quantity/show';
import type { CurrentRecipe } from './current-recipe';

/** The status bar item of an open recipe: its name, how long it takes, and how many findings wait. */
export function showStatus(current: CurrentRecipe): vscode.Disposable {
    const item = vscode.window.createStatusBarItem('kerfbook.recipe', vscode.StatusBarAlignment.Left, 40);
    item.name = 'Kerfbook Recipe';
    item.command = 'kerfbook.openBenchViewToSide';

    const refresh = () => {
        const { checklist, uri } = current;
        const open = vscode.window.activeTextEditor?.document.uri.toString();
        if (uri === undefined || checklist === undefined || open !== uri) {
            item.hide();
            return;
        }
        const { totals, unknown } = checklist;
        const time = totals === undefined ? 'time unknown' : showTime(totals.machine + totals.attended + totals.waiting);
        const findings = countFindings(vscode.Uri.parse(uri));
        item.text = `$(list-ordered) ${checklist.recipe} · ${time}${findings.short}`;
        item.accessibilityInformation = { label: `Recipe ${checklist.title}, ${time}, ${findings.long}. Opens the bench view.` };
        item.tooltip = [
            checklist.title,
            totals === undefined
                ? `Times are unknown: ${unknown ?? ''}`
                : `Laser ${showTime(totals.machine)}, hands on ${showTime(totals.attended)}, waiting ${showTime(totals.waiting)}`,
            findings.long,
            'Select to open the bench view',
        ].join('\n');
        item.show();
    };

    refresh();
    return vscode.Disposable.from(
        item,
        current.onDidChange(refresh),
        vscode.window.onDidChangeActiveTextEditor(refresh),
        vscode.languages.onDidChangeDiagnostics(refresh),
    );
}

function countFindings(uri: vscode.Uri): { short: string; long: string } {
    const severities = vscode.languages.getDiagnostics(uri).map(({ severity }) => severity);
    const errors = severities.filter((severity) => severity === vscode.DiagnosticSeverity.Error).length;
    const warnings = severities.filter((severity) => severity === vscode.DiagnosticSeverity.Warning).length;
    return {
        short: `${errors > 0 ? `  $(error) ${errors}` : ''}${warnings > 0 ? `  $(warning) ${warnings}` : ''}`,
        long: `${errors} ${errors === 1 ? 'error' : 'errors'}, ${warnings} ${warnings === 1 ? 'warning' : 'warnings'}`,
    };
}
