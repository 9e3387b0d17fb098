import * as vscode from 'vscode';
import { showTime } from '../shared/quantity/show';
import type { CurrentRecipe } from './current-recipe';

/** The status bar item of an open recipe: its name, how long it takes, and how many findings wait. */
export function showStatus(current: CurrentRecipe): vscode.Disposable {
    const item = vscode.window.createStatusBarItem('kerfbook.recipe', vscode.StatusBarAlignment.Left, 40);
    item.name = vscode.l10n.t('Kerfbook Recipe');
    item.command = 'kerfbook.openBenchViewToSide';

    const refresh = () => {
        const { checklist, uri } = current;
        if (uri === undefined || checklist === undefined || !(current.isPinned || isAtRecipes())) {
            item.hide();
            return;
        }
        const { totals, unknown } = checklist;
        const time =
            totals === undefined ? vscode.l10n.t('time unknown') : showTime(totals.machine + totals.attended + totals.waiting);
        const findings = countFindings(vscode.Uri.parse(uri));
        item.text = `$(${current.isPinned ? 'pinned' : 'list-ordered'}) ${checklist.recipe} · ${time}${findings.short}`;
        item.accessibilityInformation = {
            label: vscode.l10n.t('Recipe {0}, {1}, {2}. Opens the bench view.', checklist.title, time, findings.long),
        };
        item.tooltip = [
            checklist.title,
            totals === undefined
                ? vscode.l10n.t('Times are unknown: {0}', unknown ?? '')
                : vscode.l10n.t(
                      'Laser {0}, hands on {1}, waiting {2}',
                      showTime(totals.machine),
                      showTime(totals.attended),
                      showTime(totals.waiting),
                  ),
            findings.long,
            ...(current.isPinned ? [vscode.l10n.t('Pinned: it stays the current recipe wherever the cursor is')] : []),
            vscode.l10n.t('Select to open the bench view'),
        ].join('\n');
        item.show();
    };

    refresh();
    return vscode.Disposable.from(
        item,
        current.onDidChange(refresh),
        current.onDidChoose(refresh),
        vscode.window.tabGroups.onDidChangeTabs(refresh),
        vscode.window.onDidChangeActiveTextEditor(refresh),
        vscode.languages.onDidChangeDiagnostics(refresh),
    );
}

/** Whether a recipe is in front, or a bench view or page of one. */
function isAtRecipes(): boolean {
    const { activeTextEditor, tabGroups } = vscode.window;
    if (activeTextEditor !== undefined) return activeTextEditor.document.languageId === 'kerfbook';
    const input = tabGroups.activeTabGroup.activeTab?.input;
    return input instanceof vscode.TabInputWebview && /kerfbook\.(bench|page)$/.test(input.viewType);
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
