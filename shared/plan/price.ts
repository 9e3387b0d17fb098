import type { Shop } from '../recipe/shop';
import type { Price } from '../recipe/stock';

/** How much of a thing is used, in the ways in which it may be sold; mm2, mm3, g. */
export interface Used {
    readonly sheets?: number;
    readonly area?: number;
    readonly volume?: number;
    readonly mass?: number;
}

/** The same fluid by mass and by volume, as far as its density is known. */
export function fluidUsed(used: Used, density: number | undefined): Used {
    if (density === undefined || !(density > 0)) return used;
    const { volume = used.mass === undefined ? undefined : used.mass / density } = used;
    const { mass = used.volume === undefined ? undefined : used.volume * density } = used;
    return { ...(volume === undefined ? {} : { volume }), ...(mass === undefined ? {} : { mass }) };
}

/** What is used costs; undefined without a price, in another currency than the shop's, or sold in a way that cannot be reckoned. */
export function costOfUsed(used: Used, price: Price | undefined, shop: Shop | undefined): number | undefined {
    const currency = shop?.currency?.value;
    if (price === undefined || currency === undefined) return undefined;
    if (price.paid.unit !== '' && price.paid.unit !== currency) return undefined;
    const amount = { sheets: used.sheets, area: used.area, volume: used.volume, mass: used.mass }[
        price.amount.dimension as keyof Used
    ];
    const cost = amount === undefined ? Number.NaN : (price.paid.value * amount) / price.amount.value;
    return cost >= 0 && cost < 1e12 ? cost : undefined;
}
