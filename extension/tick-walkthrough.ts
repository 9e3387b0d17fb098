import * as vscode from 'vscode';

/** Steps of the walkthrough that show by their files that they are done: a context key, and where such a file lies. */
const signs = [
    ['kerfbook.hasRecipes', '**/*.kerf'],
    ['kerfbook.hasCoupons', '**/made/coupon-*/coupon.kerf'],
    ['kerfbook.hasMade', '**/made/*/job-sheet.html'],
    ['kerfbook.hasRuns', '**/runs/*.kerf'],
] as const;

/** Ticks the steps of the walkthrough that were done before, or without it. One file of each is enough, and is looked for once. */
export async function tickWalkthrough(): Promise<void> {
    await Promise.all(
        signs.map(async ([key, pattern]) => {
            const [found] = await vscode.workspace.findFiles(pattern, '**/{node_modules,.git}/**', 1);
            if (found !== undefined) await vscode.commands.executeCommand('setContext', key, true);
        }),
    );
}
