import { describe, expect, it } from 'vitest';
import type { Recipe } from '../../shared/recipe/recipe';
import { type OpenOrder, openOrders } from '../../shared/week/open-orders';

const nowhere = { uri: 'file:///a.kerf', offset: 0, length: 0 };
const recipe = (name: string, ...made: readonly (readonly [day: string, made?: number])[]): Recipe =>
    ({
        name,
        whole: nowhere,
        runs: made.map(([date, count]) => ({ date: { value: date }, ...(count === undefined ? {} : { made: count }) })),
    }) as unknown as Recipe;
const order = (of: Recipe, pieces: number, more: Partial<OpenOrder> = {}): OpenOrder => ({
    recipe: of,
    pieces,
    ordered: '2026-12-01',
    isDelivered: false,
    ...more,
});
const left = (orders: readonly OpenOrder[]) => openOrders(orders).map((each) => [each.recipe.name, each.left]);

describe('what is still to be made', () => {
    it('is all of it where no run says what it made', () => {
        expect(left([order(recipe('tray', ['2026-12-02']), 4)])).toEqual([['tray', 4]]);
    });
    it('is less by what was made since the order', () => {
        expect(left([order(recipe('tray', ['2026-11-30', 9], ['2026-12-02', 3]), 4)])).toEqual([['tray', 1]]);
        expect(left([order(recipe('tray', ['2026-12-02', 4]), 4)])).toEqual([]);
    });
    it('what was made goes to the order that is due first, what is over to the next', () => {
        const tray = recipe('tray', ['2026-12-02', 5]);
        const orders = [
            order(tray, 4),
            order(tray, 4, { due: '2026-12-20' }),
            order(tray, 3, { due: '2026-12-10', whom: 'the ferry office' }),
        ];
        expect(left(orders)).toEqual([
            ['tray', 4],
            ['tray', 2],
        ]);
    });
    it('what was delivered has had its part, and is not made any more', () => {
        const tray = recipe('tray', ['2026-12-02', 5]);
        expect(left([order(tray, 4, { isDelivered: true }), order(tray, 4)])).toEqual([['tray', 3]]);
    });
    it('what another recipe made does not count', () => {
        const both = [order(recipe('tray', ['2026-12-02', 5]), 2), order(recipe('lid'), 2)];
        expect(left(both)).toEqual([['lid', 2]]);
    });
});
