import * as vscode from 'vscode';
import type { RecipeServer } from './server';

const restart = 'kerfbook.restartServer';

/** Shows, beside a recipe's language and in the status bar, that the language server is down, and offers to start it. */
export function showServerStatus(server: RecipeServer): vscode.Disposable {
    const language = vscode.languages.createLanguageStatusItem('kerfbook.server', { language: 'kerfbook' });
    language.name = vscode.l10n.t('Kerfbook Language Server');
    const bar = vscode.window.createStatusBarItem('kerfbook.server', vscode.StatusBarAlignment.Left, 41);
    bar.name = vscode.l10n.t('Kerfbook Language Server');
    bar.text = `$(error) ${vscode.l10n.t('Kerfbook is down')}`;
    bar.tooltip = vscode.l10n.t('The language server has stopped: recipes are not checked. Select to restart it.');
    bar.accessibilityInformation = { label: vscode.l10n.t('Kerfbook is down. {0}', bar.tooltip) };
    bar.backgroundColor = new vscode.ThemeColor('statusBarItem.errorBackground');
    bar.command = restart;
    const refresh = (): void => {
        const { isDown } = server;
        language.text = isDown ? vscode.l10n.t('Kerfbook is down') : vscode.l10n.t('Kerfbook is running');
        language.severity = isDown ? vscode.LanguageStatusSeverity.Error : vscode.LanguageStatusSeverity.Information;
        language.command = { command: restart, title: vscode.l10n.t('Restart') };
        if (isDown) bar.show();
        else bar.hide();
    };
    refresh();
    return vscode.Disposable.from(language, bar, server.onDidChangeDown(refresh));
}
