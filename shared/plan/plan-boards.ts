import { type BoardRuns, boardRuns, latestPockets } from '../burn/board-runs';
import { couponFor, datedRows } from '../burn/run-rows';
import type { Recipe } from '../recipe/recipe';
import type { Sheet } from '../recipe/stock';
import { contentKey } from './content-key';
import type { Memo } from './memo';

/** What runs say of each board and veneer of a recipe on its laser. */
export function planBoards(recipe: Recipe, memo: Memo): BoardRuns[] {
    const sheets = new Map(recipe.blanks.flatMap(({ sheet }) => (sheet === undefined ? [] : [[sheet.name, sheet] as const])));
    return [...sheets.values()].flatMap((sheet) => remembered(recipe, sheet, memo) ?? []);
}

function remembered(recipe: Recipe, sheet: Sheet, memo: Memo): BoardRuns | undefined {
    const { laser, today } = recipe;
    const key = contentKey(couponFor(recipe, sheet.name), laser, sheet, datedRows(recipe, sheet.name), today);
    const known = memo.get('board-runs', key, () => boardRuns(recipe, sheet));
    // Remembered by content, they may have moved in the text since.
    const pockets = latestPockets(recipe, sheet);
    return known && { ...known, latest: known.latest.map((each, index) => ({ ...each, pocket: pockets[index]! })) };
}
