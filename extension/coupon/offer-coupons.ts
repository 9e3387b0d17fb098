import * as vscode from 'vscode';
import type { CurrentRecipe } from '../current-recipe';
import type { RecipeServer } from '../server';
import { addMeasured } from './add-measured';
import type { CouponPlace } from './choose-coupon';
import { makeCoupon } from './make-coupon';

/** The commands around coupons. */
export function offerCoupons(server: RecipeServer, current: CurrentRecipe): vscode.Disposable {
    return vscode.Disposable.from(
        vscode.commands.registerCommand('kerfbook.makeCoupon', (place?: CouponPlace) => makeCoupon(server, current, place)),
        vscode.commands.registerCommand('kerfbook.addMeasuredSquares', (place?: CouponPlace) =>
            addMeasured(server, current, place),
        ),
    );
}
