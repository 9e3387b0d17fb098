import { cutWidth, type LaidPiece, type SheetYield, sheetYield } from '../bench/sheet-yield';
import type { Recipe } from '../recipe/recipe';
import { rackName } from '../recipe/stock';
import { contentKey } from './content-key';
import type { Memo } from './memo';
import type { BlankPlan, Cutting } from './plan';

/** Sheets to buy and how to cut them, for those whose size is written. */
export function planCuttings(recipe: Recipe, blanks: readonly BlankPlan[], memo: Memo): Cutting[] {
    const sheets = new Map(
        blanks.flatMap(({ blank }) => (blank.sheet === undefined ? [] : [[rackName(blank.sheet), blank.sheet]])),
    );
    return [...sheets.values()].flatMap((sheet) => {
        if (sheet.sheet === undefined) return [];
        const size = { width: sheet.sheet.width.value, height: sheet.sheet.height.value };
        const pieces = blanks.flatMap(({ blank, name, size: blankSize }) =>
            blank.sheet === undefined || rackName(blank.sheet) !== rackName(sheet) || blankSize === undefined
                ? []
                : [{ name, ...blankSize, count: recipe.make, ...(blank.grain === undefined ? {} : { grain: blank.grain }) }],
        );
        if (pieces.length === 0) return [];
        const cut = cutWidth[sheet.kind];
        const yielded = memo.get('cutting', contentKey(size, pieces, cut), () => sheetYield(size, pieces, cut));
        return yielded === undefined ? [] : [{ sheet, size, yielded, consumed: consumedOf(size, yielded, cut) }];
    });
}

function consumedOf(size: Cutting['size'], { sheets, layout, scaled }: SheetYield, cut: number): number {
    const last = layout.at(-1);
    if (last === undefined || sheets === 0) return 0;
    // Of a run too long to be laid out only the pattern is known, not how the last sheet looks.
    return scaled ? sheets : sheets - 1 + takenOf(size, last, cut);
}

/** Part of a sheet up to the end of its last blank, along its longer side. */
function takenOf(size: Cutting['size'], laid: readonly LaidPiece[], cut: number): number {
    const along = size.width >= size.height;
    const length = along ? size.width : size.height;
    const end = laid.reduce((far, piece) => Math.max(far, along ? piece.x + piece.width : piece.y + piece.height), 0);
    return Math.min(1, (end + cut) / length);
}
