import type { Interval } from '../quantity/interval';
import type { Recipe } from '../recipe/recipe';
import type { MeasuredPocket } from '../recipe/run';
import type { Sheet } from '../recipe/stock';
import { type Drift, driftOf } from './drift';
import { fitCoupon } from './fit';
import { predict } from './law';
import { type Fresh, lawOfDay, startOf } from './law-of-day';
import { asKnownOn, couponFor, datedRow } from './run-rows';

/** What all runs in sight, of whatever recipe, say of one board or veneer on the recipe's laser. */
export interface BoardRuns {
    readonly sheet: string;
    readonly laser: string;
    /** The last event after which the laser may burn otherwise on it; only runs since then count. */
    readonly start?: Fresh;
    /** Squares of a coupon stand behind the law that the power is told by; else it is fitted to the runs. */
    readonly isMeasured: boolean;
    readonly drift: Drift;
    /** Lines of the latest runs, from the oldest to the newest. */
    readonly latest: readonly ToldPocket[];
}

/** A measured pocket beside what was to be expected of it before it was burnt. */
export interface ToldPocket {
    readonly pocket: MeasuredPocket;
    /**
     * Depth (mm) that was planned, where the run keeps it; else what its settings give by the coupon and the runs before its
     * day, with the range of one more pocket (95 %). Absent where the law of that day is not known, since coupon, laser or
     * board have changed since.
     */
    readonly told?: Interval;
    /** No measured square stood behind it. */
    readonly guess?: true;
}

/** So many runs are looked at one by one. */
const LATEST = 3;

/** Of a board or veneer of the recipe; undefined where it has no laser. O(pockets), with a fit for each of the latest. */
export function boardRuns(recipe: Recipe, sheet: Sheet): BoardRuns | undefined {
    const { laser, today } = recipe;
    if (laser === undefined) return undefined;
    const pockets = pocketsIn(recipe, sheet.name);
    const coupon = couponFor(recipe, sheet.name);
    const start = startOf(coupon, laser, sheet);
    const rows = pockets.map(datedRow);
    return {
        sheet: sheet.name,
        laser: laser.name,
        ...(start !== undefined && { start }),
        isMeasured: fitCoupon(coupon, laser, sheet.wood).degreesOfFreedom !== undefined,
        drift: driftOf(lawOfDay(coupon, laser, sheet, rows, today).power?.days ?? []),
        latest: latestPockets(recipe, sheet).map((pocket) => toldPocket(recipe, sheet, pocket)),
    };
}

/** A measured pocket beside what was to be expected of it: by the plan that its run keeps, else by what was known before its day. */
export function toldPocket(recipe: Recipe, sheet: Sheet, pocket: MeasuredPocket): ToldPocket {
    // A kept depth without a tolerance says nothing of how far off its settings may be.
    if (pocket.planned !== undefined && pocket.planned.high > pocket.planned.low) return { pocket, told: pocket.planned };
    const coupon = couponFor(recipe, sheet.name);
    const start = startOf(coupon, recipe.laser, sheet);
    if (start !== undefined && pocket.date < start.date) return { pocket };
    const before = asKnownOn(recipe, pocket.date);
    const law = lawOfDay(coupon, recipe.laser, sheet, pocketsIn(before, sheet.name).map(datedRow), pocket.date);
    const told = predict(law, pocket);
    return told === undefined ? { pocket } : { pocket, told, ...(law.degreesOfFreedom === undefined && { guess: true }) };
}

/** What was measured in a board or veneer up to the recipe's day, from the oldest to the newest. */
function pocketsIn({ measured, today }: Recipe, sheet: string): MeasuredPocket[] {
    return measured
        .filter((pocket) => pocket.sheet === sheet && (today === undefined || pocket.date <= today))
        .toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
}

/** Lines of the latest runs on a board or veneer, from the oldest to the newest. */
export function latestPockets(recipe: Recipe, sheet: Sheet): MeasuredPocket[] {
    const pockets = pocketsIn(recipe, sheet.name);
    const runOf = ({ date, recipe }: MeasuredPocket): string => `${date} ${recipe}`;
    const latest = new Set([...new Set(pockets.map(runOf))].slice(-LATEST));
    return pockets.filter((pocket) => latest.has(runOf(pocket)));
}
