import * as vscode from 'vscode';
import { showTime } from '../shared/quantity/show';
import type { CurrentRecipe } from './current-recipe';
import type { RecipeServer } from './server';

/** The status bar item of an open recipe: its name, how long it takes, and how many findings wait. */
export function showStatus(server: RecipeServer, current: CurrentRecipe): vscode.Disposable {
    const item = vscode.window.createStatusBarItem('kerfbook.recipe', vscode.StatusBarAlignment.Left, 40);
    item.name = 'Kerfbook Recipe';
    item.command = 'kerfbook.openBenchViewToSide';

    const refresh = () => {
        const uri = current.place?.uri;
        const name = current.name;
        const editor = vscode.window.activeTextEditor;
        if (uri === undefined || name === undefined || editor?.document.uri.toString() !== uri) {
            item.hide();
            return;
        }
        const totals = current.summary?.totals?.[name];
        const findings = countFindings(vscode.Uri.parse(uri));
        const time = totals === undefined ? '' : ` · ${showTime(totals.machine + totals.attended + totals.waiting)}`;
        item.text = `$(list-ordered) ${name}${time}${findings.short}`;
        item.accessibilityInformation = { label: `Recipe ${name}${time}, ${findings.long}. Opens the bench view.` };
        const times =
            totals === undefined
                ? []
                : [
                      `Laser: ${showTime(totals.machine)}`,
                      `Hands on: ${showTime(totals.attended)}`,
                      `Waiting: ${showTime(totals.waiting)}`,
                  ];
        item.tooltip = [name, ...times, findings.long, 'Select to open the bench view'].join('\n');
        item.show();
    };

    refresh();
    return vscode.Disposable.from(
        item,
        current.onDidChange(refresh),
        server.onDidPlan(refresh),
        vscode.window.onDidChangeActiveTextEditor(refresh),
        vscode.languages.onDidChangeDiagnostics(refresh),
    );
}

function countFindings(uri: vscode.Uri): { short: string; long: string } {
    const severities = vscode.languages.getDiagnostics(uri).map((diagnostic) => diagnostic.severity);
    const errors = severities.filter((severity) => severity === vscode.DiagnosticSeverity.Error).length;
    const warnings = severities.filter((severity) => severity === vscode.DiagnosticSeverity.Warning).length;
    return {
        short: `${errors > 0 ? `  $(error) ${errors}` : ''}${warnings > 0 ? `  $(warning) ${warnings}` : ''}`,
        long: `${errors} ${errors === 1 ? 'error' : 'errors'}, ${warnings} ${warnings === 1 ? 'warning' : 'warnings'}`,
    };
}
