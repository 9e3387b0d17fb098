import { cutWidth, type SheetYield, sheetYield } from '../bench/sheet-yield';
import type { Sheet } from '../recipe/stock';
import type { Plan } from './plan';

/** How the blanks of one kind of sheet are cut, for all the pieces. */
export interface Cutting {
    readonly sheet: Sheet;
    readonly yielded: SheetYield;
}

/** Sheets to buy and how to cut them, for those whose size is written. Worked out when somebody asks. */
export function cuttings(plan: Plan): Cutting[] {
    const sheets = new Map(
        plan.blanks.flatMap(({ blank }) => (blank.sheet === undefined ? [] : [[blank.sheet.name, blank.sheet]])),
    );
    return [...sheets.values()].flatMap((sheet) => {
        if (sheet.sheet === undefined) return [];
        const size = { width: sheet.sheet.width.value, height: sheet.sheet.height.value };
        const pieces = plan.blanks.flatMap(({ blank, name, size: blankSize }) =>
            blank.sheet?.name !== sheet.name || blankSize === undefined
                ? []
                : [{ name, ...blankSize, count: plan.recipe.make, ...(blank.grain === undefined ? {} : { grain: blank.grain }) }],
        );
        const yielded = sheetYield(size, pieces, cutWidth[sheet.kind]);
        return yielded === undefined || pieces.length === 0 ? [] : [{ sheet, yielded }];
    });
}
