import * as vscode from 'vscode';
import type { WriteCouponParams } from '../../shared/view/coupon-protocol';
import type { WritingOptions } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { CurrentRecipe } from '../current-recipe';
import type { RecipeServer } from '../server';
import { mayWrite } from '../write/trust';
import { offers, shortly, wishOf, writtenTo } from '../write/write-files';
import { type CouponPlace, chooseCoupon } from './choose-coupon';

/** So many strips tell the kerf well enough, so many plugs what goes in, and both fit on an offcut. @commonPractice */
const STRIPS = 6;
const PLUGS = 7;

/** "Make Coupon": a ladder of numbered squares for a board and a laser, as files in `made/coupon-…` beside the file that declares the board. */
export async function makeCoupon(
    server: RecipeServer,
    current: CurrentRecipe,
    known?: CouponPlace,
    options: WritingOptions = {},
): Promise<void> {
    if (!mayWrite()) return;
    const place = known ?? (await chooseCoupon(server, current, false));
    if (place === undefined) return;
    const { uri, sheet, laser } = place;
    if (vscode.workspace.getWorkspaceFolder(uri) === undefined) {
        void vscode.window.showWarningMessage(
            'Files are written only inside an open folder. Open the folder that holds this file.',
        );
        return;
    }
    const beside = place.beside ?? (known === undefined ? await askWhat() : {});
    if (beside === undefined) return;
    const params: WriteCouponParams = { uri: uri.toString(), sheet, laser, ...options, ...beside };
    const answer = await server.ask(requests.writeCoupon, params);
    if (answer === undefined) return;
    if (answer.written === 0) {
        void vscode.window.showErrorMessage(`No coupon was made. ${shortly(answer.problems)}`.trim());
        return;
    }
    const text = `${writtenTo(answer)}. ${shortly(answer.problems)}`.trim();
    const show = answer.problems.length > 0 ? vscode.window.showWarningMessage : vscode.window.showInformationMessage;
    const chosen = await show(
        `${text} Burn it on an offcut, measure the squares, then add them to the coupon.`,
        'Show',
        'Add Measured Squares',
        ...offers(answer),
    );
    const folder = vscode.Uri.parse(answer.folder, true);
    if (chosen === 'Show') await vscode.commands.executeCommand('revealInExplorer', vscode.Uri.joinPath(folder, 'coupon.svg'));
    if (chosen === 'Add Measured Squares') await vscode.commands.executeCommand('kerfbook.addMeasuredSquares', place);
    const wish = wishOf(chosen);
    if (wish !== undefined) await makeCoupon(server, current, { ...place, beside }, wish);
}

/** Undefined where the maker thinks better of it. */
async function askWhat(): Promise<CouponPlace['beside']> {
    const items = [
        { label: 'Squares', description: 'how deep and how dark the beam burns', beside: {} },
        {
            label: `Squares and ${STRIPS} strips to cut out`,
            description: 'how wide it cuts, too',
            beside: { cuts: STRIPS },
        },
        {
            label: `Squares and ${PLUGS} plugs with an opening`,
            description: 'how much clearance a part that is cut out takes, too',
            beside: { fits: PLUGS },
        },
    ];
    return (await vscode.window.showQuickPick(items, { title: 'What is the coupon to tell?' }))?.beside;
}
