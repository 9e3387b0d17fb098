import * as vscode from 'vscode';

/** The guides that travel with the extension, by their file names. */
const guides: Readonly<Record<string, string>> = {
    rules: 'What Kerfbook notices: every rule',
    coupon: 'Coupons: burning, measuring and reading them',
    review: 'Reviewing versions',
    editors: 'Other editors',
};

/** "Open Guide…" and the walkthrough. */
export function offerGuides(context: vscode.ExtensionContext): vscode.Disposable {
    return vscode.Disposable.from(
        vscode.commands.registerCommand('kerfbook.openGuide', async (named?: unknown) => {
            const name = typeof named === 'string' && named in guides ? named : await chooseGuide();
            if (name === undefined) return;
            const page = vscode.Uri.joinPath(context.extensionUri, 'extension', 'docs', `${name}.md`);
            await vscode.commands.executeCommand('markdown.showPreview', page);
        }),
        vscode.commands.registerCommand('kerfbook.openWalkthrough', () =>
            vscode.commands.executeCommand('workbench.action.openWalkthrough', `${context.extension.id}#start`, false),
        ),
    );
}

async function chooseGuide(): Promise<string | undefined> {
    const items = Object.entries(guides).map(([name, label]) => ({ label, name }));
    return (await vscode.window.showQuickPick(items, { title: 'Open which guide?' }))?.name;
}
