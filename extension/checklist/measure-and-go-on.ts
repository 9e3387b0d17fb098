import * as vscode from 'vscode';
import type { ChecklistItem } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { RecipeServer } from '../server';
import { applyEdits } from '../write/apply-edits';

/** Asks after how many passes an engraving was measured and how deep it is, and writes both into the recipe: the rest is planned from there. */
export async function measureAndGoOn(server: RecipeServer, { label, measureAfter }: ChecklistItem): Promise<void> {
    if (measureAfter === undefined) return;
    const { where, unit } = measureAfter;
    const passes = await askPasses(label, measureAfter.passes);
    if (passes === undefined) return;
    const depth = await vscode.window.showInputBox({
        title: vscode.l10n.t('{0}: depth after {1}', label, passesWords(passes)),
        prompt: vscode.l10n.t('What did you measure? The settings are then for what is left.'),
        placeHolder: `0.31 ${unit}`,
        ignoreFocusOut: true,
        validateInput: async (text) => {
            const reading = text.trim() === '' ? undefined : await server.ask(requests.readDepth, { text });
            return reading !== undefined && 'problem' in reading
                ? vscode.l10n.t('A length, such as 0.52 mm or 1/64 in.')
                : undefined;
        },
    });
    if (depth === undefined || depth.trim() === '') return;
    const reading = await server.ask(requests.readDepth, { text: depth });
    if (reading === undefined || 'problem' in reading) return;
    const answer = await server.ask(requests.reached, {
        uri: where.uri,
        offset: where.offset,
        depth: reading.depth,
        passes,
    });
    if (answer === undefined) {
        void vscode.window.showErrorMessage(vscode.l10n.t('Nothing was written: the recipe cannot be read at present.'));
    } else if ('problem' in answer) {
        void vscode.window.showErrorMessage(answer.problem);
    } else {
        const document = await applyEdits(answer);
        if (document !== undefined) await vscode.window.showTextDocument(document, { preserveFocus: true });
    }
}

async function askPasses(label: string, passes: number): Promise<number | undefined> {
    if (passes === 2) return 1;
    const choices = Array.from({ length: passes - 1 }, (_, at) => {
        const after = passes - 1 - at;
        return { label: passesWords(after), after };
    });
    const title = vscode.l10n.t('{0}: after how many of its {1} passes?', label, passes);
    return (await vscode.window.showQuickPick(choices, { title, ignoreFocusOut: true }))?.after;
}

function passesWords(passes: number): string {
    return passes === 1 ? vscode.l10n.t('one pass') : vscode.l10n.t('{0} passes', passes);
}
