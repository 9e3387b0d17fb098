import * as vscode from 'vscode';
import { type BuildAnswer, type BuiltFile, method, type PlannedParams } from '../../shared/view/protocol';
import { recipePlace } from '../recipe-place';
import type { RecipeServer } from '../server';
import { isSafeName, safePath } from './safe-path';
import { mayWrite } from './trust';

/** "Write Files for Machine and Bench": everything the server builds, into `made/<recipe>` beside the recipe. */
export function offerWriting(server: RecipeServer): vscode.Disposable {
    const recipes = new Map<string, PlannedParams['recipes']>();
    const listening = server.onDidPlan((params) => recipes.set(params.uri, params.recipes));
    const command = vscode.commands.registerCommand('kerfbook.writeFiles', async (place?: unknown, named?: unknown) => {
        const uri = recipePlace(place) ?? vscode.window.activeTextEditor?.document.uri;
        if (uri === undefined || !uri.path.endsWith('.kerf')) {
            void vscode.window.showInformationMessage('Open the recipe whose files are to be written.');
            return;
        }
        if (!mayWrite()) return;
        if (vscode.workspace.getWorkspaceFolder(uri) === undefined) {
            void vscode.window.showWarningMessage(
                'Files are written only inside an open folder. Open the folder that holds this recipe.',
            );
            return;
        }
        const recipe = typeof named === 'string' ? named : await chooseRecipe(recipes.get(uri.toString()) ?? []);
        if (recipe === undefined) return;
        await writeRecipe(server, uri, recipe);
    });
    return vscode.Disposable.from(listening, command);
}

async function chooseRecipe(names: readonly string[]): Promise<string | undefined> {
    if (names.length > 1) return vscode.window.showQuickPick(names, { title: 'Write the files of which recipe?' });
    if (names.length === 0) void vscode.window.showWarningMessage('This file holds no recipe that can be planned.');
    return names[0];
}

async function writeRecipe(server: RecipeServer, uri: vscode.Uri, recipe: string): Promise<void> {
    const answer = await vscode.window.withProgress(
        { location: vscode.ProgressLocation.Notification, title: `Working out the files of ${recipe}`, cancellable: true },
        (_progress, token) => server.ask<BuildAnswer>(method.build, { uri: uri.toString(), recipe }, token),
    );
    if (answer === undefined) return;
    if (answer.files.length === 0 || !isSafeName(recipe)) {
        void vscode.window.showErrorMessage(`Nothing was written for ${recipe}. ${answer.problems.join(' ')}`.trim());
        return;
    }
    const folder = vscode.Uri.joinPath(uri, '..', 'made', recipe);
    const problems = [...answer.problems];
    const written = await writeAll(folder, answer.files, problems);
    if (written === 0) {
        void vscode.window.showErrorMessage(`Nothing was written for ${recipe}. ${shortly(problems)}`);
        return;
    }
    const old = await countOthers(folder, answer.files);
    if (old > 0)
        problems.push(`${old} ${old === 1 ? 'file' : 'files'} of an earlier writing still ${old === 1 ? 'lies' : 'lie'} there.`);
    const text =
        `${recipe}: ${written} ${written === 1 ? 'file' : 'files'} written to made/${recipe}. ${shortly(problems)}`.trim();
    const show = problems.length > 0 ? vscode.window.showWarningMessage : vscode.window.showInformationMessage;
    if ((await show(text, 'Show')) === 'Show') await vscode.commands.executeCommand('revealInExplorer', folder);
}

/** A message has room for a few only; the first says most. */
function shortly(problems: readonly string[]): string {
    const [told, left] = [problems.slice(0, 3), problems.length - 3];
    return [...told, ...(left > 0 ? [`So it is with ${left} more.`] : [])].join(' ');
}

/** Writes files below a folder and says how many; what people fill in is kept once it is there. */
export async function writeAll(folder: vscode.Uri, files: readonly BuiltFile[], problems: string[]): Promise<number> {
    let written = 0;
    for (const file of files) {
        const names = safePath(file.path);
        if (names === undefined) {
            problems.push(`“${file.path}” is not a path inside the folder and was left out.`);
            continue;
        }
        const target = vscode.Uri.joinPath(folder, ...names);
        if (file.fillIn === true && (await holdsOther(target, file.text))) {
            problems.push(`${file.path} is left as it is, since figures may stand in it.`);
            continue;
        }
        try {
            await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(file.text));
            written += 1;
        } catch (error) {
            problems.push(`${file.path}: ${error instanceof Error ? error.message : error}.`);
        }
    }
    return written;
}

async function holdsOther(file: vscode.Uri, text: string): Promise<boolean> {
    try {
        return new TextDecoder().decode(await vscode.workspace.fs.readFile(file)) !== text;
    } catch {
        return false; // it is not there
    }
}

/** An old file beside new ones may be taken to the machine by mistake, so it is worth saying. */
async function countOthers(folder: vscode.Uri, files: readonly BuiltFile[]): Promise<number> {
    const expected = new Set(files.map((file) => file.path.split('/')[0]));
    try {
        return (await vscode.workspace.fs.readDirectory(folder)).filter(([name]) => !expected.has(name)).length;
    } catch {
        return 0;
    }
}
