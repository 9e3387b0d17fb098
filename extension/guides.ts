import * as vscode from 'vscode';
import { anchorIn, isAnchor, pagesIn } from './manual-pages';

/** "Open Manual", "Open Page of the Manual…" and the walkthrough. The manual travels with the extension. */
export function offerGuides(context: vscode.ExtensionContext): vscode.Disposable {
    const docs = vscode.Uri.joinPath(context.extensionUri, 'extension', 'docs');
    const show = (name: string, fragment = '') =>
        vscode.commands.executeCommand('markdown.showPreview', vscode.Uri.joinPath(docs, `${name}.md`).with({ fragment }));
    return vscode.Disposable.from(
        vscode.commands.registerCommand('kerfbook.openManual', async (asked?: unknown) => {
            const anchor = isAnchor(asked) ? asked : await anchorAtCursor();
            await (anchor === undefined ? show('README') : show('language', anchor));
        }),
        vscode.commands.registerCommand('kerfbook.openGuide', async (asked?: unknown) => {
            const pages = pagesIn(
                new TextDecoder().decode(await vscode.workspace.fs.readFile(vscode.Uri.joinPath(docs, 'README.md'))),
            );
            const page =
                pages.find(({ name }) => name === asked) ??
                (await vscode.window.showQuickPick(pages, {
                    title: vscode.l10n.t('Open which page of the manual?'),
                    matchOnDetail: true,
                }));
            if (page !== undefined) await show(page.name);
        }),
        vscode.commands.registerCommand('kerfbook.openWalkthrough', () =>
            vscode.commands.executeCommand('workbench.action.openWalkthrough', `${context.extension.id}#start`, false),
        ),
    );
}

/** What the hover at the cursor leads to, so that both say the same of a word. */
async function anchorAtCursor(): Promise<string | undefined> {
    const editor = vscode.window.activeTextEditor;
    if (editor?.document.languageId !== 'kerfbook') return undefined;
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
        'vscode.executeHoverProvider',
        editor.document.uri,
        editor.selection.active,
    );
    return hovers
        .flatMap(({ contents }) => contents.map((each) => anchorIn(typeof each === 'string' ? each : each.value)))
        .find((anchor) => anchor !== undefined);
}
