import type { Order } from '../bench/list-schedule';
import type { BookedPlan } from './booked-plan';
import type { AskedOrder } from './week';

/** One thing that is wanted, planned for as many pieces as are. */
export interface WeekEntry extends AskedOrder {
    readonly plan: BookedPlan;
}

/** What an order is laid out as: several pieces at once where there are very many. */
export interface LaidOrder {
    readonly entry: WeekEntry;
    readonly order: Order;
    /** Pieces that are taken as one. */
    readonly lot: number;
}
