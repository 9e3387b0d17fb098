import { minorDigits } from '../quantity/currency';

/** What a shop reckons with. Money in the shop's own currency. */
export interface Rates {
    /** ISO 4217, such as EUR. */
    readonly currency: string;
    /** For an hour of somebody's work, at the bench or beside the laser. */
    readonly hourly: number;
    /** For an hour of the laser itself: power, wear, filters. The one who minds it is paid by the hour besides. */
    readonly machineHourly: number;
    /** Rent, tools, light: a part of materials and work. */
    readonly overhead: number;
    /** What is put on top of the cost, as a part of it. */
    readonly markUp: number;
}

/** Something used up, with its price for each unit where that is known. */
export interface Priced {
    readonly item: string;
    readonly amount: number;
    readonly unitPrice?: number;
}

/** For all the pieces of a run, unless a figure says otherwise. */
export interface Cost {
    readonly materials: number;
    readonly work: number;
    readonly machine: number;
    readonly overhead: number;
    readonly total: number;
    /** Cost of one piece, and its price, rounded up to what can be paid. */
    readonly each: number;
    readonly price: number;
    /** Items that nobody gave a price for: the cost is short of them. */
    readonly unpriced: readonly string[];
}

/**
 * Cost of a run of pieces, and the price of one.
 *
 * @param pieces how many (>= 1)
 * @param times of all pieces, s: somebody's, at the bench and beside the laser, and the laser's own
 */
export function costOf(
    pieces: number,
    times: { readonly attended: number; readonly machine: number },
    supplies: readonly Priced[],
    rates: Rates,
): Cost {
    const priced = supplies.filter(
        (supply) => supply.unitPrice !== undefined && usable(supply.unitPrice) && usable(supply.amount),
    );
    const materials = priced.reduce((sum, supply) => sum + supply.amount * supply.unitPrice!, 0);
    const hours = (seconds: number): number => (usable(seconds) ? seconds / 3600 : 0);
    const work = hours(times.attended) * money(rates.hourly);
    const machine = hours(times.machine) * money(rates.machineHourly);
    const overhead = (materials + work + machine) * money(rates.overhead);
    const total = materials + work + machine + overhead;
    const each = total / Math.max(1, Math.floor(pieces) || 1);
    return {
        materials,
        work,
        machine,
        overhead,
        total,
        each,
        price: roundUp(each * (1 + money(rates.markUp)), rates.currency),
        unpriced: supplies.filter((supply) => !priced.includes(supply)).map((supply) => supply.item),
    };
}

function usable(value: number): boolean {
    return value >= 0 && value < 1e12;
}

function money(value: number): number {
    return usable(value) ? value : 0;
}

/** Up to the currency's smallest coin, such as a cent. */
function roundUp(value: number, currency: string): number {
    const coins = 10 ** minorDigits(currency);
    return Math.max(0, Math.ceil(value * coins - 1e-9)) / coins;
}
