import * as vscode from 'vscode';
import type { CurrentRecipe } from './current-recipe';
import { ruleOf } from './rule-of';

/** Texts of this scheme are the server's own; the client has it asked for them. */
const SCHEME = 'kerfbook-page';

/** "Explain Finding": a rule's page as a rendered Markdown preview, from the finding, the palette or the bench view. */
export function offerExplanations(current: CurrentRecipe): vscode.Disposable {
    const command = vscode.commands.registerCommand('kerfbook.explainFinding', async (rule?: unknown) => {
        const chosen = typeof rule === 'string' ? rule : await chooseRule(current);
        if (chosen === undefined) return;
        await vscode.commands.executeCommand('markdown.showPreview', vscode.Uri.from({ scheme: SCHEME, path: `/${chosen}.md` }));
    });
    const actions = vscode.languages.registerCodeActionsProvider(
        { language: 'kerfbook' },
        {
            provideCodeActions: (_document, _range, context) =>
                context.diagnostics.flatMap((diagnostic) => {
                    const rule = ruleOf(diagnostic);
                    if (rule === undefined) return [];
                    const action = new vscode.CodeAction(vscode.l10n.t('Explain: {0}', rule), vscode.CodeActionKind.QuickFix);
                    action.command = {
                        command: 'kerfbook.explainFinding',
                        title: vscode.l10n.t('Explain Finding'),
                        arguments: [rule],
                    };
                    action.diagnostics = [diagnostic];
                    return [action];
                }),
        },
        { providedCodeActionKinds: [vscode.CodeActionKind.QuickFix] },
    );
    return vscode.Disposable.from(command, actions);
}

/** The rule of the finding under the cursor; a choice among the file's findings when there is none or more than one. */
async function chooseRule(current: CurrentRecipe): Promise<string | undefined> {
    const uri = current.fileFor();
    if (uri === undefined) return undefined;
    const all = vscode.languages.getDiagnostics(uri).filter((diagnostic) => ruleOf(diagnostic) !== undefined);
    const { activeTextEditor: editor } = vscode.window;
    const here = all.filter(
        ({ range }) => editor?.document.uri.toString() === uri.toString() && range.intersection(editor.selection) !== undefined,
    );
    const offered = here.length > 0 ? here : all;
    if (offered.length === 0) {
        void vscode.window.showInformationMessage(vscode.l10n.t('There is no finding in this file.'));
        return undefined;
    }
    if (here.length === 1) return ruleOf(here[0]!);
    const items = offered.map((diagnostic) => ({
        label: ruleOf(diagnostic)!,
        description: vscode.l10n.t('line {0}', diagnostic.range.start.line + 1),
        detail: diagnostic.message,
    }));
    return (await vscode.window.showQuickPick(items, { title: vscode.l10n.t('Explain which finding?'), matchOnDetail: true }))
        ?.label;
}
