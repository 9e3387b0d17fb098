import { AstUtils, type LangiumDocument } from 'langium';
import type { Coupon, Laser, Sheet } from '../../language/generated/ast';
import { type StockInSight, stockInSight } from '../../language/names/stock-in-sight';
import { type Message, phrase } from '../../shared/recipe/phrase';
import type { Workshop } from '../workshop/workshop';

/** A board or veneer and a laser, with the file from which both are seen and the coupon that there is of them. */
export interface CouponStock {
    readonly document: LangiumDocument;
    readonly sheet: Sheet;
    readonly laser: Laser;
    readonly coupon: Coupon | undefined;
}

/** The first of the documents that sees both; else what it sees instead, in words. */
export function findStock(
    { services }: Workshop,
    documents: readonly LangiumDocument[],
    sheetName: string,
    laserName: string,
): CouponStock | { readonly problem: Message } {
    const sights = documents.map((document) => ({ document, ...stockInSight(document, services) }));
    for (const { document, sheets, lasers, coupons } of sights) {
        const sheet = sheets.find(({ name }) => name === sheetName);
        const laser = lasers.find(({ name }) => name === laserName);
        if (sheet === undefined || laser === undefined) continue;
        const coupon = coupons.find((each) => each.sheet?.ref === sheet && each.laser?.ref === laser);
        return { document, sheet, laser, coupon };
    }
    return { problem: missing(sights, sheetName, laserName) };
}

function missing(sights: readonly StockInSight[], sheetName: string, laserName: string): Message {
    const sheets = new Set(sights.flatMap((sight) => sight.sheets.map(({ name }) => name)));
    const lasers = new Set(sights.flatMap((sight) => sight.lasers.map(({ name }) => name)));
    if (!sheets.has(sheetName)) return phrase`There is no board or veneer ${sheetName} here${among(sheets)}.`;
    if (!lasers.has(laserName)) return phrase`There is no laser ${laserName} here${among(lasers)}.`;
    return phrase`No file sees both ${sheetName} and ${laserName}.`;
}

function among(names: ReadonlySet<string>): string {
    return names.size === 0 ? '' : phrase`; there is ${[...names].join(', ')}`;
}

/** The document in which the coupon stands, or in which it is best written: beside the board, where the laser is seen too. */
export function homeOfCoupon({ services }: Workshop, { document, sheet, laser, coupon }: CouponStock): LangiumDocument {
    if (coupon !== undefined) return AstUtils.getDocument(coupon);
    const homes = [AstUtils.getDocument(sheet), AstUtils.getDocument(laser)];
    const sees = (home: LangiumDocument): boolean => {
        const sight = stockInSight(home, services);
        return sight.sheets.includes(sheet) && sight.lasers.includes(laser);
    };
    return homes.find(sees) ?? document;
}
