import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { fileIn, open, until } from './until';

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

    it('open a bench view beside the text, one a recipe', async () => {
        await open('heron-tray.kerf');
        await vscode.commands.executeCommand('kerfbook.openBenchViewToSide');
        const tab = await until('the bench view', () => benches()[0]);
        await until(
            'its title',
            () => tab.label === 'Bench: Heron serving tray' || benches()[0]?.label === 'Bench: Heron serving tray',
        );
        assert.notEqual(tab.group.viewColumn, vscode.ViewColumn.One);
        await vscode.commands.executeCommand('kerfbook.openBenchView', fileIn('heron-tray.kerf'));
        assert.equal(benches().length, 1);
    });

    it('write the files of a recipe into a folder beside it, and nowhere else', async () => {
        const uri = fileIn('tide-coaster.kerf');
        await open('tide-coaster.kerf');
        // The command ends when its message is closed, which nobody does here.
        const command = until('the command to write', async () => {
            void vscode.commands.executeCommand('kerfbook.writeFiles', uri);
            await new Promise((resolve) => setTimeout(resolve, 1500));
            return exists('made/tide-coaster/job-sheet.html');
        });
        await command;
        const names = await namesIn('made/tide-coaster');
        assert.ok(
            names.some((name) => name.endsWith('.ngc')),
            names.join(),
        );
        assert.ok(names.some((name) => name.endsWith('.svg')));
        assert.deepEqual(await namesIn('made'), ['tide-coaster']);
        const sheet = new TextDecoder().decode(await vscode.workspace.fs.readFile(fileIn('made/tide-coaster/job-sheet.html')));
        assert.match(sheet, /Tide coaster/);
    });

    it('explain a finding on a page of its own', async () => {
        await vscode.commands.executeCommand('kerfbook.explainFinding', 'not-mirrored');
        const page = await vscode.workspace.openTextDocument(vscode.Uri.parse('kerfbook-page:/not-mirrored.md'));
        assert.match(page.getText(), /^# /);
        await until('the preview', () => tabs().some(({ label }) => /not-mirrored/.test(label)));
    });
});

function tabs(): readonly vscode.Tab[] {
    return vscode.window.tabGroups.all.flatMap((group) => group.tabs);
}

function benches(): vscode.Tab[] {
    return tabs().filter(({ input }) => input instanceof vscode.TabInputWebview && input.viewType.endsWith('kerfbook.bench'));
}

async function exists(path: string): Promise<boolean> {
    return vscode.workspace.fs.stat(fileIn(path)).then(
        () => true,
        () => false,
    );
}

async function namesIn(path: string): Promise<string[]> {
    return (await vscode.workspace.fs.readDirectory(fileIn(path))).map(([name]) => name).sort();
}
