import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { fileIn, findings, open, until } from './until';

describe('tasks', () => {
    it('check says what the command line says, and nothing is shown twice', async () => {
        const faulty = fileIn('heron-tray-faulty.kerf');
        await open('heron-tray-faulty.kerf');
        const before = (
            await until('the findings', () => findings(faulty).some(({ code }) => code === 'not-mirrored') && findings(faulty))
        ).length;
        // Of files that are open the editor knows better.
        await vscode.commands.executeCommand('workbench.action.closeAllEditors');
        assert.equal(await exitCode('check'), 1);
        await new Promise((resolve) => setTimeout(resolve, 1000));
        const all = vscode.languages
            .getDiagnostics(faulty)
            .map(
                ({ code, range, message }) =>
                    `${String(typeof code === 'object' ? code.value : code)} ${range.start.line} ${message}`,
            );
        assert.deepEqual(all.toSorted(), [...new Set(all)].toSorted());
        assert.ok(all.length >= before - 1, `${before} before, ${all.length} after`);
    });

    it('build writes the files of every recipe without errors and holds the others back', async () => {
        assert.equal(await exitCode('build'), 1);
        const made = (await vscode.workspace.fs.readDirectory(fileIn('made'))).map(([name]) => name);
        assert.ok(made.includes('gate-sign') && made.includes('seed-box'), made.join());
        assert.ok(!made.includes('heron-tray-faulty'));
        const sheets = (await vscode.workspace.fs.readDirectory(fileIn('made/gate-sign'))).map(([name]) => name);
        assert.ok(sheets.includes('job-sheet.html'), sheets.join());
    });
});

async function exitCode(name: string): Promise<number | undefined> {
    const tasks = await vscode.tasks.fetchTasks({ type: 'kerfbook' });
    const task = tasks.find((each) => each.name === name);
    assert.ok(task, `no task ${name} among ${tasks.map((each) => each.name).join()}`);
    return new Promise((resolve) => {
        const listening = vscode.tasks.onDidEndTaskProcess(({ execution, exitCode: code }) => {
            if (execution.task.name !== name) return;
            listening.dispose();
            resolve(code);
        });
        void vscode.tasks.executeTask(task);
    });
}
