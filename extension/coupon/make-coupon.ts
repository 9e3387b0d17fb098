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
            vscode.l10n.t('Files are written only inside an open folder. Open the folder that holds this file.'),
        );
        return;
    }
    const beside = place.beside ?? (known === undefined ? await askWhat() : {});
    if (beside === undefined) return;
    const params: WriteCouponParams = { uri: uri.toString(), sheet, laser, ...options, ...beside };
    const answer = await server.ask(requests.writeCoupon, params);
    if (answer === undefined) return;
    if (answer.written === 0) {
        void vscode.window.showErrorMessage(vscode.l10n.t('No coupon was made. {0}', shortly(answer.problems)).trim());
        return;
    }
    const text = `${writtenTo(answer)}. ${shortly([...answer.problems, ...(answer.notes ?? [])])}`.trim();
    const show = answer.problems.length > 0 ? vscode.window.showWarningMessage : vscode.window.showInformationMessage;
    const chosen = await show(
        vscode.l10n.t('{0} Burn it on an offcut, measure the squares, then add them to the coupon.', text),
        vscode.l10n.t('Show'),
        vscode.l10n.t('Add Measured Squares'),
        ...offers(answer),
    );
    const folder = vscode.Uri.parse(answer.folder, true);
    if (chosen === vscode.l10n.t('Show'))
        await vscode.commands.executeCommand('revealInExplorer', vscode.Uri.joinPath(folder, 'coupon.svg'));
    if (chosen === vscode.l10n.t('Add Measured Squares'))
        await vscode.commands.executeCommand('kerfbook.addMeasuredSquares', place);
    const wish = wishOf(chosen);
    if (wish !== undefined) await makeCoupon(server, current, { ...place, beside }, wish);
}

/** Undefined where the maker thinks better of it. */
async function askWhat(): Promise<CouponPlace['beside']> {
    const items = [
        { label: vscode.l10n.t('Squares'), description: vscode.l10n.t('how deep and how dark the beam burns'), beside: {} },
        {
            label: vscode.l10n.t('Squares and {0} strips to cut out', STRIPS),
            description: vscode.l10n.t('how wide it cuts, too'),
            beside: { cuts: STRIPS },
        },
        {
            label: vscode.l10n.t('Squares and {0} plugs with an opening', PLUGS),
            description: vscode.l10n.t('how much clearance a part that is cut out takes, too'),
            beside: { fits: PLUGS },
        },
        {
            label: vscode.l10n.t('The few squares that tell most'),
            description: vscode.l10n.t('chosen for what your recipes ask for, beside those that are measured'),
            beside: { next: true },
        },
    ];
    return (await vscode.window.showQuickPick(items, { title: vscode.l10n.t('What is the coupon to tell?') }))?.beside;
}
