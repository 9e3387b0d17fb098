import { AstUtils, type LangiumDocument, type URI, UriUtils } from 'langium';
import { isBuiltIn } from '../../language/built-in';
import { namesIn, recipesIn } from '../../shared/recipe/name';
import { couponFolder, madeFolder } from '../../shared/sheets/made-folder';
import type { CouponStock } from '../coupon/find-stock';
import type { FileReader } from '../files/read-result';
import type { Owner } from './write-made';

/** Where the files of something belong, and whose they are: the same for editor and command line. */
export interface MadePlace {
    readonly folder: URI;
    readonly owner: Owner;
}

/** @param below the folder in which all folders are made; `made` beside the recipe when absent */
export function placeOfRecipe(document: LangiumDocument, recipe: string, below?: URI): MadePlace {
    return placeOf(document, `recipe ${recipe}`, madeFolder(recipe), below);
}

/** Beside the file that declares the board; where the board is built in, beside the file that uses it. */
export function placeOfCoupon(stock: CouponStock, below?: URI, from?: number): MadePlace {
    const declared = AstUtils.getDocument(stock.sheet);
    const home = isBuiltIn(declared.uri.toString()) ? stock.document : declared;
    const [sheet, laser] = [stock.sheet.name, stock.laser.name];
    return placeOf(home, `coupon of ${sheet} on ${laser}`, couponFolder(sheet, laser, from), below);
}

function placeOf(document: LangiumDocument, of: string, name: string, below?: URI): MadePlace {
    const folder = UriUtils.joinPath(below ?? UriUtils.joinPath(document.uri, '..', 'made'), name);
    return { folder, owner: { of, from: UriUtils.relative(folder, document.uri) } };
}

/** Whether an owner is still there: its file is, and its name stands in it. What cannot be read is taken to be there. */
export async function stillOwns({ of, from }: Owner, folder: URI, read: FileReader): Promise<boolean> {
    const found = await read(UriUtils.joinPath(folder, from).toString());
    if ('problem' in found) return found.problem !== 'missing';
    const text = new TextDecoder().decode(found.bytes);
    const recipe = /^recipe (.*)$/.exec(of)?.[1];
    if (recipe !== undefined) return recipesIn(text).has(recipe);
    const standing = namesIn(text);
    return [...namesIn(of)].every((name) => standing.has(name));
}
