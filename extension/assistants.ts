import * as vscode from 'vscode';

/**
 * Lets assistants in the editor ask about the folders that are open: the command line's server, reading only. Nothing runs before an
 * assistant is allowed to, which the editor asks about itself.
 */
export function offerToAssistants({ extensionUri, extension, subscriptions }: vscode.ExtensionContext): void {
    const changed = new vscode.EventEmitter<void>();
    const cli = vscode.Uri.joinPath(extensionUri, 'dist', 'cli.cjs').fsPath;
    // Editors of the same kind may lack it.
    const offer = vscode.lm?.registerMcpServerDefinitionProvider?.('kerfbook', {
        onDidChangeMcpServerDefinitions: changed.event,
        provideMcpServerDefinitions: () => {
            const folders = vscode.workspace.isTrusted ? (vscode.workspace.workspaceFolders ?? []) : [];
            return folders
                .filter(({ uri }) => uri.scheme === 'file')
                .map(
                    ({ name, uri }) =>
                        new vscode.McpStdioServerDefinition(
                            folders.length > 1 ? vscode.l10n.t('Kerfbook: {0}', name) : 'Kerfbook',
                            process.execPath,
                            [cli, 'mcp', uri.fsPath],
                            { ELECTRON_RUN_AS_NODE: '1' },
                            String(extension.packageJSON.version),
                        ),
                );
        },
    });
    subscriptions.push(
        changed,
        vscode.workspace.onDidGrantWorkspaceTrust(() => changed.fire()),
        vscode.workspace.onDidChangeWorkspaceFolders(() => changed.fire()),
        ...(offer === undefined ? [] : [offer]),
    );
}
