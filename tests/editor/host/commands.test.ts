import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';

describe('commands', () => {
    it('are all there once a recipe has been opened', async () => {
        const extension = vscode.extensions.getExtension('kerfbook.kerfbook');
        assert.ok(extension, 'the extension is not known');
        await extension.activate();
        const declared = extension.packageJSON.contributes.commands.map(
            ({ command }: { command: string }) => command,
        ) as string[];
        const known = await vscode.commands.getCommands(true);
        assert.deepEqual(
            declared.filter((command) => !known.includes(command)),
            [],
        );
    });
});
