import * as vscode from 'vscode';
import type { RecipeServer } from '../server';
import { buildFolder, checkFolder } from './work';
import { WorkTerminal } from './work-terminal';

const TYPE = 'kerfbook';

/** A task as `tasks.json` has it. */
interface Definition extends vscode.TaskDefinition {
    readonly task?: unknown;
    readonly strict?: unknown;
}

/** The tasks `kerfbook: check` and `kerfbook: build` of each workspace folder. They run in the editor, so that they need no Node. */
export function offerTasks(server: RecipeServer): vscode.Disposable {
    const make = (definition: Definition, folder: vscode.WorkspaceFolder): vscode.Task | undefined => {
        const { task, strict } = definition;
        if (task !== 'check' && task !== 'build') return undefined;
        const run = new vscode.CustomExecution(
            async () =>
                new WorkTerminal((say, token) =>
                    task === 'check'
                        ? checkFolder(server, folder.uri, strict === true, say, token)
                        : buildFolder(server, folder.uri, say, token),
                ),
        );
        const made = new vscode.Task(definition, folder, task, 'kerfbook', run, '$kerfbook');
        made.group = task === 'build' ? vscode.TaskGroup.Build : vscode.TaskGroup.Test;
        made.detail =
            task === 'build'
                ? vscode.l10n.t('Writes the files for machine and bench of every recipe')
                : vscode.l10n.t('Says what would go wrong in every recipe');
        made.presentationOptions = { reveal: vscode.TaskRevealKind.Always, clear: true, showReuseMessage: false };
        return made;
    };
    return vscode.tasks.registerTaskProvider(TYPE, {
        provideTasks: () =>
            (vscode.workspace.workspaceFolders ?? []).flatMap((folder) =>
                ['check', 'build'].flatMap((task) => make({ type: TYPE, task }, folder) ?? []),
            ),
        resolveTask: ({ definition, scope }) => {
            const folder = typeof scope === 'object' ? scope : vscode.workspace.workspaceFolders?.[0];
            return folder === undefined ? undefined : make(definition, folder);
        },
    });
}
