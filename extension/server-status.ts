import * as vscode from 'vscode';
import type { RecipeServer } from './server';

const restart = 'kerfbook.restartServer';

/** Shows, beside a recipe's language and in the status bar, that the language server is down, and offers to start it. */
export function showServerStatus(server: RecipeServer): vscode.Disposable {
    const language = vscode.languages.createLanguageStatusItem('kerfbook.server', { language: 'kerfbook' });
    language.name = 'Kerfbook Language Server';
    const bar = vscode.window.createStatusBarItem('kerfbook.server', vscode.StatusBarAlignment.Left, 41);
    bar.name = 'Kerfbook Language Server';
    bar.text = '$(error) Kerfbook is down';
    bar.tooltip = 'The language server has stopped: recipes are not checked. Select to restart it.';
    bar.accessibilityInformation = { label: `Kerfbook is down. ${bar.tooltip}` };
    bar.backgroundColor = new vscode.ThemeColor('statusBarItem.errorBackground');
    bar.command = restart;
    const refresh = (): void => {
        const { isDown } = server;
        language.text = isDown ? 'Kerfbook is down' : 'Kerfbook is running';
        language.severity = isDown ? vscode.LanguageStatusSeverity.Error : vscode.LanguageStatusSeverity.Information;
        language.command = { command: restart, title: 'Restart' };
        if (isDown) bar.show();
        else bar.hide();
    };
    refresh();
    return vscode.Disposable.from(language, bar, server.onDidChangeDown(refresh));
}
