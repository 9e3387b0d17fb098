import type { LangiumDocument } from 'langium';
import * as ast from '../generated/ast';
import type { KerfServices } from '../services';

/** What a file can name for a coupon, its own things first, each name once. */
export interface StockInSight {
    readonly sheets: readonly ast.Sheet[];
    readonly lasers: readonly ast.Laser[];
    readonly coupons: readonly ast.Coupon[];
}

export function stockInSight(document: LangiumDocument, services: KerfServices): StockInSight {
    const seen = [document, ...services.names.UsedFiles.of(document).flatMap((used) => used.document ?? [])];
    const entries = seen.flatMap(({ parseResult }) => (ast.isFile(parseResult.value) ? parseResult.value.entries : []));
    return {
        sheets: byName(entries.filter(ast.isSheet)),
        lasers: byName(entries.filter(ast.isLaser)),
        coupons: entries.filter(ast.isCoupon),
    };
}

function byName<T extends { name: string }>(things: readonly T[]): T[] {
    const first = new Map<string, T>();
    for (const thing of things) if (thing.name && !first.has(thing.name)) first.set(thing.name, thing);
    return [...first.values()];
}
