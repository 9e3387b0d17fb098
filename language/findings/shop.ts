import type { AstNode, LangiumDocument } from 'langium';
import { currencyCodes, currencyName, isCurrency } from '../../shared/quantity/currency';
import type { Quantity } from '../../shared/quantity/quantity';
import type { Finding } from '../../shared/recipe/finding';
import { nearest } from '../../shared/recipe/nearest';
import { phrase } from '../../shared/recipe/phrase';
import type { Shop } from '../../shared/recipe/shop';
import * as ast from '../generated/ast';
import { coatOf, glueOf, resinOf, sealerOf } from '../lowering/fluids';
import { whereOf, whereOfFirstWord, whereOfPart } from '../lowering/places';
import { quantityOf } from '../lowering/quantity';
import { shopOf, shopsInSight } from '../lowering/shop';
import { priceOf } from '../lowering/stock';
import type { KerfServices } from '../services';
import { isLine } from '../vocabulary/lookup';
import { removal, replaceWith, say } from './say';

/** More shops than one in sight: only the nearest is reckoned with. */
export function* shopsFindings(document: LangiumDocument, services: KerfServices): Iterable<Finding> {
    const [first, ...others] = shopsInSight(document, services);
    const file = document.parseResult.value;
    if (first === undefined || !ast.isFile(file)) return;
    for (const { shop, in: from } of others) {
        const use = file.uses.find((each) =>
            services.names.UsedFiles.of(document).some((used) => used.document === from && used.through[0] === each),
        );
        const place = from === document ? whereOfPart(shop, 'name') : use && whereOfPart(use, 'path');
        if (place === undefined || shop.name === first.shop.name) continue; // the same name twice is said elsewhere
        yield say('second-shop', {
            severity: 'warning',
            message: phrase`There are two shops in sight: costs are worked out by \`${first.shop.name}\`, not by \`${shop.name}\`.`,
            where: place,
            ...(first.in === document
                ? { related: [{ message: phrase`The one that counts.`, where: whereOfPart(first.shop, 'name') }] }
                : {}),
        });
    }
}

/** Currencies worth between about half a dollar and two: in these a wage can be told from a slip. */
const likeEuro: ReadonlySet<string> = new Set(['EUR', 'USD', 'GBP', 'CHF', 'CAD', 'AUD', 'NZD', 'SGD', 'BND']);
/** What an hour costs in such a currency; own judgement, no source. */
const usualHour = { hourly: [5, 250], laserhourly: [0.5, 250] } as const;

/** Of a shop: its currency, and hours that nobody would pay. */
export function* shopFindings(node: AstNode): Iterable<Finding> {
    if (!ast.isShop(node)) return;
    for (const item of node.items)
        if (ast.isTrait(item) && item.value !== undefined && !isCurrency(item.value)) yield noCurrency(item);
    yield* sameTwice(node.items.filter(ast.isShopPrice));
    const { currency } = shopOf(node);
    if (currency === undefined) return;
    yield* otherCurrencies(node, currency.value);
    if (likeEuro.has(currency.value)) yield* unlikelyHours(node, currency.value);
}

function* otherCurrencies(node: ast.Shop, currency: string): Iterable<Finding> {
    for (const item of node.items) {
        const unit = ast.isFigure(item) ? item.value?.unit : undefined;
        if (unit === undefined || unit === currency || !isCurrency(unit)) continue;
        yield say('other-currency', {
            severity: 'warning',
            message: phrase`This is in ${unit}, but ${node.name} counts in ${currency}: it counts as nothing.`,
            where: whereOf((item as ast.Figure).value),
        });
    }
}

function* unlikelyHours(node: ast.Shop, currency: string): Iterable<Finding> {
    for (const item of node.items) {
        if (!ast.isFigure(item) || !isLine(item, 'hourly', 'laserhourly')) continue;
        const [low, high] = usualHour[item.key];
        const money = quantityOf(item.value);
        if (money === undefined || (money.value >= low && money.value <= high)) continue;
        yield say('unlikely-magnitude', {
            severity: 'hint',
            message: phrase`That is unusually ${money.value < low ? 'little' : 'much'} for an hour: ${low} to ${high} ${currency} is usual.`,
            where: whereOf(item.value),
        });
    }
}

function noCurrency(item: ast.Trait): Finding {
    const where = whereOfPart(item, 'value');
    const meant = isCurrency(item.value.toUpperCase()) ? item.value.toUpperCase() : nearest(item.value, currencyCodes());
    return say('unknown-word', {
        message: phrase`\`${item.value}\` is no currency: a code of ISO 4217 is wanted, such as \`EUR\`.${meant === undefined ? '' : phrase` Did you mean \`${meant}\` (${currencyName(meant)})?`}`,
        where,
        fixes: meant === undefined ? [] : [replaceWith(where, meant, phrase`Change to \`${meant}\``, true)],
    });
}

type PriceNode = ast.SheetPrice | ast.FluidPrice | ast.ShopPrice;

/** Of a price: a currency it lacks or that is not the shop's, and amounts that cannot be reckoned with. */
export function* priceFindings(node: AstNode, shop: Shop | undefined): Iterable<Finding> {
    if (ast.isResin(node)) yield* sameTwice(node.items.filter(ast.isFluidPrice));
    if (!isPrice(node)) return;
    const paid = quantityOf(node.paid);
    const amount = quantityOf(node.amount);
    if (paid !== undefined) yield* currencyFindings(node, paid, shop);
    if (amount !== undefined && amount.value <= 0) {
        yield say('impossible-value', { message: phrase`A price is for more than nothing.`, where: whereOf(node.amount) });
    }
    if (ast.isShopPrice(node)) yield* amountFindings(node, amount);
    if (ast.isFluidPrice(node)) yield* densityFindings(node);
}

function isPrice(node: AstNode): node is PriceNode {
    return ast.isSheetPrice(node) || ast.isFluidPrice(node) || ast.isShopPrice(node);
}

function* currencyFindings(node: PriceNode, paid: Quantity, shop: Shop | undefined): Iterable<Finding> {
    const own = shop?.currency?.value;
    if (paid.unit !== '' && own !== undefined && paid.unit !== own) {
        yield say('other-currency', {
            severity: 'warning',
            message: phrase`This price is in ${paid.unit}, but ${shop!.name} counts in ${own}: it is left out of the cost.`,
            where: whereOf(node.paid),
        });
    }
    if (paid.unit !== '' || shop !== undefined) return; // a shop without a currency is told so itself
    yield say('price-without-currency', {
        severity: 'info',
        message: phrase`No shop is in sight, so nobody knows in which currency this is. A line such as \`shop estuary { currency EUR }\` says it.`,
        where: whereOf(node.paid),
    });
}

/** Foil and tape are used by area, paper by the sheet. */
function* amountFindings(node: ast.ShopPrice, amount: Quantity | undefined): Iterable<Finding> {
    const wanted = node.of === 'abrasive' ? 'sheets' : 'area';
    if (node.of === undefined || amount === undefined || amount.dimension === wanted) return;
    const message =
        wanted === 'area'
            ? phrase`Of ${node.of} an area is bought, such as \`price 12 for 2.5 m2 of ${node.of}\`.`
            : phrase`Of abrasive paper sheets are bought, such as \`price 0.80 for 1 sheet of abrasive\`.`;
    yield say('wrong-unit', { message, where: whereOf(node.amount) });
}

/** What is bought by volume and used by mass, or the other way round, needs a density. */
function* densityFindings(node: ast.FluidPrice): Iterable<Finding> {
    const price = priceOf(node);
    const { $container: block } = node;
    if (price === undefined || node.of !== undefined) return;
    const { density, used } = ast.isResin(block)
        ? { density: resinOf(block).density, used: resinOf(block).mix?.by === 'weight' ? 'mass' : 'volume' }
        : {
              density: (ast.isSealer(block) ? sealerOf(block) : ast.isGlue(block) ? glueOf(block) : coatOf(block)).density,
              used: 'mass',
          };
    if (density !== undefined || price.amount.dimension === used) return;
    yield say('missing-property', {
        severity: 'info',
        message: phrase`\`${block.name}\` is used by ${used} and bought by ${price.amount.dimension}: without a \`density\` it has no price.`,
        where: whereOf(node.amount),
    });
}

function* sameTwice(prices: readonly (ast.FluidPrice | ast.ShopPrice)[]): Iterable<Finding> {
    const first = new Map<string, AstNode>();
    for (const price of prices) {
        const of = price.of ?? '';
        const earlier = first.get(of);
        if (earlier === undefined) {
            first.set(of, price);
            continue;
        }
        yield say('duplicate-property', {
            severity: 'warning',
            message: phrase`There are two prices${of === '' ? '' : phrase` of ${of}`} here: the first one counts.`,
            where: whereOfFirstWord(price),
            related: [{ message: phrase`The one that counts.`, where: whereOf(earlier) }],
            fixes: [removal(whereOf(price), phrase`Remove this line`)],
        });
    }
}
