import type { Cutting, Supply } from '../plan/plan';
import type { CutOffcut } from './on-hand';

/** One book over all that is to be made: who does what when, what is late, what is cut and bought. Moments of quantity/calendar; times in s. */
export interface Week {
    /** When the first working day begins. */
    readonly start: number;
    readonly makers: number;
    /** Hours of each day in which hands can work; absent: day and night. */
    readonly workday?: number;
    /** Days of the week on which the shop is closed, 0 for Sunday. */
    readonly closed: readonly number[];
    /** In the order in which they are ready. */
    readonly orders: readonly PlannedOrder[];
    readonly sittings: readonly WeekSitting[];
    /** What cures or dries by itself, in the order in which it begins. */
    readonly waits: readonly WeekWait[];
    /** What is busy how long: all hands, then each laser. */
    readonly loads: readonly WeekLoad[];
    /** When all is ready. */
    readonly ready: number;
    /** No plan has all ready sooner. */
    readonly least: WeekBound;
    /** What the plan takes longer than the bound, as a part of it; no plan is better than this by more. */
    readonly gap: number;
    /** By how much something is late in every plan; 0 where that is not proven. */
    readonly leastLate: number;
    /** Sheets, cut for all together. */
    readonly cuttings: readonly WeekCutting[];
    readonly shopping: readonly ShoppingLine[];
    /** ISO 4217; absent without a shop that says one. */
    readonly currency?: string;
    /** Hands-on in all, and what it would be with each order by itself. */
    readonly attended: number;
    readonly attendedApart: number;
    /** Recipes of which times and amounts are not all known, and why. */
    readonly unknown: readonly { readonly recipe: string; readonly why: string }[];
    /** So many pieces that several were laid out as one. */
    readonly coarse: boolean;
}

/** What is wanted: pieces of a recipe, by a day. */
export interface AskedOrder {
    /** For whom or what, as it is written. */
    readonly for?: string;
    /** When it was ordered, ISO 8601. */
    readonly ordered?: string;
    /** Ready in the evening of this day, ISO 8601. */
    readonly due?: string;
}

export interface PlannedOrder extends AskedOrder {
    readonly recipe: string;
    readonly title: string;
    readonly pieces: number;
    readonly ready: number;
    /** How long after closing time of its day it is ready; absent where it is not. */
    readonly late?: number;
    /** Why it is late, and what would help. */
    readonly why?: string;
    readonly attended: number;
    /** Of it, time in which the laser runs. */
    readonly machine: number;
}

/** A stretch of time in which one maker is at the bench or beside a laser without a pause. */
export interface WeekSitting {
    /** Whose hands, from 1. */
    readonly hands: number;
    readonly start: number;
    readonly end: number;
    readonly jobs: readonly WeekJob[];
    /** Waits that go on all the while. */
    readonly meanwhile: readonly string[];
}

export interface WeekJob {
    /** Index into the orders. */
    readonly order: number;
    readonly recipe: string;
    /** Such as "Finish tray with tung-oil, coat 2 of 3". */
    readonly title: string;
    readonly pieces: number;
    readonly start: number;
    readonly length: number;
    /** Of it, time in which the laser runs, and which. */
    readonly machine: number;
    readonly laser?: string;
}

/** A wait of all pieces of an order: from when the first begins to when the last is over. */
export interface WeekWait {
    readonly recipe: string;
    /** Such as "the glue cures under the press". */
    readonly what: string;
    readonly start: number;
    readonly end: number;
}

export interface WeekLoad {
    /** A laser; absent for the hands. */
    readonly laser?: string;
    /** In all. */
    readonly busy: number;
    /** Part of the hours until all is ready; absent where work goes on day and night. */
    readonly share?: number;
}

/** Sheets of one kind, and the offcuts of it that are used up before them. */
export interface WeekCutting extends Cutting {
    readonly offcuts: readonly CutOffcut[];
}

export interface WeekBound {
    readonly ready: number;
    /** Why, such as "the hands have 41 h to do". */
    readonly by: string;
}

export interface ShoppingLine extends Supply {
    /** Recipes that need it. */
    readonly recipes: readonly string[];
    /** What is left of what was on hand, in its unit; absent where nobody has said. */
    readonly onHand?: number;
    /** What is short. */
    readonly buy: number;
}

/** Version of the JSON's shape. */
export const weekSchema = 1 as const;
