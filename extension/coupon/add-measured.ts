import * as vscode from 'vscode';
import type { DepthReading, MeasuredParams, OpenSquare, SquaresParams } from '../../shared/view/coupon-protocol';
import type { WrittenAnswer } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { CurrentRecipe } from '../current-recipe';
import type { RecipeServer } from '../server';
import { applyEdits } from '../write/apply-edits';
import { type CouponPlace, chooseCoupon } from './choose-coupon';

type Row = MeasuredParams['rows'][number];

/** "Add Measured Squares to Coupon": asks square by square, then writes all of them into the text as one edit. */
export async function addMeasured(server: RecipeServer, current: CurrentRecipe, known?: CouponPlace): Promise<void> {
    const place = known ?? (await chooseCoupon(server, current, true));
    if (place === undefined) return;
    const { sheet, laser } = place;
    const params: SquaresParams = { uri: place.uri.toString(), sheet, laser };
    const found = await server.ask(requests.squares, params);
    if (found === undefined) return;
    if ('problem' in found) {
        void vscode.window.showWarningMessage(found.problem);
        return;
    }
    const rows = await askForDepths(server, vscode.l10n.t('{0} on {1}', sheet, laser), found.squares);
    if (rows === undefined || rows.length === 0) return;
    const answer = await server.ask(requests.measured, { ...params, rows });
    if (answer === undefined) return;
    if ('problem' in answer) void vscode.window.showErrorMessage(answer.problem);
    else await write(answer);
}

/** What was typed for each square. Escape ends the asking and keeps what is there, if the maker wants it kept. */
async function askForDepths(server: RecipeServer, title: string, squares: readonly OpenSquare[]): Promise<Row[] | undefined> {
    const rows: Row[] = [];
    for (const [index, { words, number }] of squares.entries()) {
        const settings = words.replace(/^burn /, '');
        const typed = await vscode.window.showInputBox({
            title: vscode.l10n.t('Coupon of {0}: {1} of {2} to measure', title, index + 1, squares.length),
            prompt: vscode.l10n.t(
                '{0}: how deep is it? Empty skips it.',
                number === undefined ? settings : vscode.l10n.t('Square {0}, {1}', number, settings),
            ),
            placeHolder: '0.31 mm',
            ignoreFocusOut: true,
            validateInput: async (text) => problemOf(await read(server, text)),
        });
        if (typed === undefined) return (await keep(rows.length)) ? rows : undefined;
        const reading = await read(server, typed);
        if (reading !== undefined && 'depth' in reading) rows.push({ words, depth: reading.depth });
    }
    return rows;
}

/** Undefined for nothing typed: the square is skipped. */
async function read(server: RecipeServer, text: string): Promise<DepthReading | undefined> {
    return text.trim() === '' ? undefined : server.ask(requests.readDepth, { text });
}

function problemOf(reading: DepthReading | undefined): string | undefined {
    return reading !== undefined && 'problem' in reading ? reading.problem : undefined;
}

async function keep(count: number): Promise<boolean> {
    if (count === 0) return false;
    const squares = count === 1 ? vscode.l10n.t('the square') : vscode.l10n.t('the {0} squares', count);
    const answer = await vscode.window.showInformationMessage(
        vscode.l10n.t('Keep {0} measured so far?', squares),
        { modal: true },
        vscode.l10n.t('Keep'),
    );
    return answer === vscode.l10n.t('Keep');
}

async function write(answer: Exclude<WrittenAnswer, { problem: string }>): Promise<void> {
    const document = await applyEdits(answer);
    if (document === undefined) return;
    const editor = await vscode.window.showTextDocument(document);
    const last = answer.edits.at(-1);
    if (last !== undefined)
        editor.revealRange(new vscode.Range(document.positionAt(last.offset), document.positionAt(last.offset)));
}
