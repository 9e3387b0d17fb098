import { costOf } from '../bench/cost';
import type { Quantity } from '../quantity/quantity';
import type { Shop } from '../recipe/shop';
import type { PlanCost, PlanSchedule, Supply } from './plan';

/** Undefined without a shop that says its currency. */
export function planCost(
    shop: Shop | undefined,
    pieces: number,
    laid: PlanSchedule,
    supplies: readonly Supply[],
): PlanCost | undefined {
    const currency = shop?.currency?.value;
    if (shop === undefined || currency === undefined) return undefined;
    const money = (written: Quantity | undefined): number =>
        written !== undefined && (written.unit === '' || written.unit === currency) ? written.value : 0;
    const rates = {
        currency,
        hourly: money(shop.hourly),
        machineHourly: money(shop.laserHourly),
        overhead: shop.overhead?.value ?? 0,
        markUp: shop.markup?.value ?? 0,
    };
    const used = supplies.map(({ item, cost }) =>
        cost === undefined ? { item, amount: 1 } : { item, amount: 1, unitPrice: cost },
    );
    return {
        ...costOf(pieces, { attended: laid.attended, machine: laid.machine }, used, rates),
        currency,
        shop: shop.name,
        hourly: rates.hourly,
        laserHourly: rates.machineHourly,
        overheadShare: rates.overhead,
        markup: rates.markUp,
        attended: laid.attended,
        runs: laid.machine,
    };
}
