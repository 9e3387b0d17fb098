import * as vscode from 'vscode';
import type { CouponChoices } from '../../shared/view/coupon-protocol';
import { requests } from '../../shared/view/requests';
import type { CurrentRecipe } from '../current-recipe';
import type { RecipeServer } from '../server';

/** A board or veneer and a laser, seen from a recipe file. */
export interface CouponPlace {
    readonly uri: vscode.Uri;
    readonly sheet: string;
    readonly laser: string;
    /** What is cut out beside the squares; asked for where it is left out. */
    readonly beside?: { readonly cuts?: number; readonly fits?: number; readonly next?: boolean };
}

/** The file in front or else that of the current recipe, and where the cursor is in it; says so when there is none. */
function placeInFile(current: CurrentRecipe): { readonly uri: vscode.Uri; readonly offset?: number } | undefined {
    const uri = current.fileFor();
    if (uri === undefined) {
        void vscode.window.showInformationMessage(vscode.l10n.t('Open a recipe file that names the board and the laser.'));
        return undefined;
    }
    const editor = vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
    return { uri, ...(editor === undefined ? {} : { offset: editor.document.offsetAt(editor.selection.active) }) };
}

/**
 * Asks for board and laser; what can only be one thing is not asked.
 * @param known whether a coupon under the cursor is taken without asking
 */
export async function chooseCoupon(
    server: RecipeServer,
    current: CurrentRecipe,
    known: boolean,
): Promise<CouponPlace | undefined> {
    const place = placeInFile(current);
    if (place === undefined) return undefined;
    const { uri } = place;
    const choices = await server.ask(requests.couponChoices, { ...place, uri: uri.toString() });
    if (choices === undefined) return undefined;
    if (known && choices.here !== undefined) return { uri, ...choices.here };
    const sheet = await choose(
        choices.sheets,
        vscode.l10n.t('Which board or veneer?'),
        vscode.l10n.t('a board or veneer'),
        (name) => rowsOf(choices, name),
    );
    if (sheet === undefined) return undefined;
    const laser = await choose(choices.lasers, vscode.l10n.t('Which laser?'), vscode.l10n.t('a laser'), (name) =>
        rowsOf(choices, sheet, name),
    );
    return laser === undefined ? undefined : { uri, sheet, laser };
}

async function choose(
    names: readonly string[],
    title: string,
    what: string,
    detail: (name: string) => string,
): Promise<string | undefined> {
    if (names.length === 0) {
        void vscode.window.showWarningMessage(vscode.l10n.t('This file knows neither by itself nor by what it uses {0}.', what));
        return undefined;
    }
    if (names.length === 1) return names[0];
    const items = names.map((label) => ({ label, description: detail(label) }));
    return (await vscode.window.showQuickPick(items, { title }))?.label;
}

function rowsOf({ coupons }: CouponChoices, sheet: string, laser?: string): string {
    const rows = coupons
        .filter((coupon) => coupon.sheet === sheet && (laser === undefined || coupon.laser === laser))
        .reduce((sum, coupon) => sum + coupon.rows, 0);
    return rows === 0 ? '' : `${rows} ${rows === 1 ? 'square' : 'squares'} measured`;
}
