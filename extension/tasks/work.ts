import * as vscode from 'vscode';
import type { CheckAnswer, CheckParams, WriteRecipeParams } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { RecipeServer } from '../server';
import { writtenTo } from '../write/write-files';
import type { Say } from './work-terminal';

/** Says what would go wrong, as the command line does. 1 if something would. */
export async function checkFolder(
    server: RecipeServer,
    folder: vscode.Uri,
    strict: boolean,
    say: Say,
    token: vscode.CancellationToken,
): Promise<number> {
    const answer = await check(server, folder, strict, token);
    if (answer === undefined) return 2;
    say(answer.report.trimEnd());
    return answer.failed ? 1 : 0;
}

/** Writes the files of every recipe in which no error is open. 1 if one was held back, or a file could not be written. */
export async function buildFolder(
    server: RecipeServer,
    folder: vscode.Uri,
    say: Say,
    token: vscode.CancellationToken,
): Promise<number> {
    const answer = await check(server, folder, false, token);
    if (answer === undefined) return 2;
    let held = 0;
    for (const { uri, path, recipes, errors } of answer.files) {
        if (recipes.length === 0) continue;
        if (errors > 0) {
            say(
                answer.report
                    .split('\n')
                    .filter((line) => line.startsWith(`${path}:`) && line.includes(': error: '))
                    .join('\n'),
            );
            say(vscode.l10n.t('{0}: {1} {2} open, nothing written', path, errors, errors === 1 ? 'error' : 'errors'));
            held += 1;
            continue;
        }
        for (const recipe of recipes) {
            if (token.isCancellationRequested) return 2;
            held += await buildRecipe(server, vscode.Uri.parse(uri, true), recipe, say, token);
        }
    }
    return held > 0 ? 1 : 0;
}

async function check(
    server: RecipeServer,
    folder: vscode.Uri,
    strict: boolean,
    token: vscode.CancellationToken,
): Promise<CheckAnswer | undefined> {
    const files = await vscode.workspace.findFiles(
        new vscode.RelativePattern(folder, '**/*.kerf'),
        '**/{node_modules,.git,made}/**',
        2000,
        token,
    );
    const params: CheckParams = { folder: folder.toString(), files: files.map(String), strict };
    return server.ask(requests.check, params, token);
}

async function buildRecipe(
    server: RecipeServer,
    uri: vscode.Uri,
    recipe: string,
    say: Say,
    token: vscode.CancellationToken,
): Promise<number> {
    const params: WriteRecipeParams = { uri: uri.toString(), recipe };
    const answer = await server.ask(requests.writeRecipe, params, token);
    if (answer === undefined || answer.written === 0) {
        say(vscode.l10n.t('{0}: nothing written. {1}', recipe, answer?.problems.join(' ') ?? '').trim());
        return 1;
    }
    say(writtenTo(answer));
    for (const problem of answer.problems) say(`  ${problem}`);
    return answer.incomplete ? 1 : 0;
}
