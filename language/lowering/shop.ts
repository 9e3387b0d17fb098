import type { LangiumDocument } from 'langium';
import { isCurrency } from '../../shared/quantity/currency';
import type { Written } from '../../shared/quantity/where';
import type { Shop } from '../../shared/recipe/shop';
import type { Price } from '../../shared/recipe/stock';
import * as ast from '../generated/ast';
import type { KerfServices } from '../services';
import { isLine } from '../vocabulary/lookup';
import { Items } from './items';
import { whereOfPart, written } from './places';
import { named, present, priceOf } from './stock';

export function shopOf(node: ast.Shop): Shop {
    const items = new Items(node);
    const price = (of: ast.ShopPrice['of']): Price | undefined =>
        items.first((item) => (ast.isShopPrice(item) && item.of === of ? priceOf(item) : undefined));
    return {
        ...named(node),
        ...present({
            currency: currencyOf(node),
            hourly: items.figure('hourly'),
            laserHourly: items.figure('laserhourly'),
            overhead: items.figure('overhead'),
            markup: items.figure('markup'),
            workday: items.figure('workday'),
            temperature: items.figure('temperature'),
            humidity: items.figure('humidity'),
            foilPrice: price('foil'),
            tapePrice: price('tape'),
            abrasivePrice: price('abrasive'),
        }),
    };
}

/** The first currency that is one. */
function currencyOf(node: ast.Shop): Written<string> | undefined {
    const line = node.items.find((item) => ast.isTrait(item) && isLine(item, 'currency') && isCurrency(item.value ?? ''));
    return line !== undefined && ast.isTrait(line) ? written(line.value, whereOfPart(line, 'value')) : undefined;
}

/** A shop and the file it stands in, the file's own first, then those it uses. */
export function* shopsInSight(
    document: LangiumDocument,
    services: KerfServices,
): Iterable<{ readonly shop: ast.Shop; readonly in: LangiumDocument }> {
    const files = [document, ...services.names.UsedFiles.of(document).flatMap((used) => used.document ?? [])];
    for (const each of files) {
        const file = each.parseResult.value;
        if (!ast.isFile(file)) continue;
        for (const shop of file.entries.filter(ast.isShop)) yield { shop, in: each };
    }
}
