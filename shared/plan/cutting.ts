import { type CutPiece, cutWidth, type LaidPiece, type SheetYield, sheetYield } from '../bench/sheet-yield';
import type { Recipe } from '../recipe/recipe';
import { rackName, type Sheet } from '../recipe/stock';
import { contentKey } from './content-key';
import type { Memo } from './memo';
import type { BlankPlan, Cutting } from './plan';

/** Blanks of one kind that are cut out of a sheet of the rack. */
export interface BlankToCut {
    readonly sheet: Sheet;
    readonly piece: CutPiece;
}

/** Sheets to buy and how to cut them, for those whose size is written. */
export function planCuttings(recipe: Recipe, blanks: readonly BlankPlan[], memo: Memo): Cutting[] {
    return cuttingsOf(blanksToCut(blanks, recipe.make), memo);
}

/** @param named what a blank of this name is called on the sheet */
export function blanksToCut(blanks: readonly BlankPlan[], count: number, named = (name: string): string => name): BlankToCut[] {
    return blanks.flatMap(({ blank: { sheet, grain }, name, size }) =>
        sheet === undefined || size === undefined
            ? []
            : [{ sheet, piece: { name: named(name), ...size, count, ...(grain === undefined ? {} : { grain }) } }],
    );
}

/** @param mostLaid see sheetYield */
export function cuttingsOf(blanks: readonly BlankToCut[], memo: Memo, mostLaid?: number): Cutting[] {
    const sheets = new Map(blanks.map(({ sheet }) => [rackName(sheet), sheet]));
    return [...sheets.values()].flatMap((sheet) => {
        if (sheet.sheet === undefined) return [];
        const size = { width: sheet.sheet.width.value, height: sheet.sheet.height.value };
        const pieces = blanks.filter((each) => rackName(each.sheet) === rackName(sheet)).map(({ piece }) => piece);
        const cut = cutWidth[sheet.kind];
        const key = contentKey(size, pieces, cut, mostLaid);
        const yielded = memo.get('cutting', key, () => sheetYield(size, pieces, cut, mostLaid));
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
export function takenOf(size: Cutting['size'], laid: readonly LaidPiece[], cut: number): number {
    const along = size.width >= size.height;
    const length = along ? size.width : size.height;
    const end = laid.reduce((far, piece) => Math.max(far, along ? piece.x + piece.width : piece.y + piece.height), 0);
    return Math.min(1, (end + cut) / length);
}
