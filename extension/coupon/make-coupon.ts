import * as vscode from 'vscode';
import { type CouponAnswer, method } from '../../shared/view/protocol';
import type { RecipeServer } from '../server';
import { isSafeName } from '../write/safe-path';
import { mayWrite } from '../write/trust';
import { writeAll } from '../write/write-files';
import { type CouponPlace, chooseCoupon } from './choose-coupon';

/** "Make Coupon": a ladder of numbered squares for a board and a laser, as files in `made/coupon-…` beside the open file. */
export async function makeCoupon(server: RecipeServer, known?: CouponPlace): Promise<void> {
    if (!mayWrite()) return;
    const place = known ?? (await chooseCoupon(server, false));
    if (place === undefined) return;
    const { uri, sheet, laser } = place;
    if (vscode.workspace.getWorkspaceFolder(uri) === undefined) {
        void vscode.window.showWarningMessage(
            'Files are written only inside an open folder. Open the folder that holds this file.',
        );
        return;
    }
    const answer = await server.ask<CouponAnswer>(method.coupon, { uri: uri.toString(), sheet, laser });
    if (answer === undefined) return;
    if (answer.files.length === 0 || !isSafeName(answer.folder)) {
        void vscode.window.showErrorMessage(`No coupon was made. ${answer.problems.join(' ')}`.trim());
        return;
    }
    const folder = vscode.Uri.joinPath(uri, '..', 'made', answer.folder);
    const problems = [...answer.problems];
    const written = await writeAll(folder, answer.files, problems);
    const text = `${written} ${written === 1 ? 'file' : 'files'} written to made/${answer.folder}. ${problems.join(' ')}`.trim();
    const show = problems.length > 0 ? vscode.window.showWarningMessage : vscode.window.showInformationMessage;
    const chosen = await show(
        `${text} Burn it on an offcut, measure the squares, then add them to the coupon.`,
        'Show',
        'Add Measured Squares',
    );
    if (chosen === 'Show') await vscode.commands.executeCommand('revealInExplorer', vscode.Uri.joinPath(folder, 'coupon.svg'));
    if (chosen === 'Add Measured Squares') await vscode.commands.executeCommand('kerfbook.addMeasuredSquares', place);
}
