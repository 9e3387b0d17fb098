import { type Consequence, consequencesOf } from './consequences';
import { groupBy } from './group-by';
import type { Review, ThingReview } from './review';

/** What every form of a review begins with: how many recipes differ, what changed in the stock, and what is worst of each recipe. */
export interface ReviewHead {
    readonly counts: { readonly changed: number; readonly added: number; readonly removed: number; readonly untouched: number };
    /** Findings that the change brought, in all recipes. */
    readonly gained: { readonly error: number; readonly warning: number };
    /** Stock that several recipes rest on and that differs, each once. */
    readonly stock: readonly StockRow[];
    /** What recipes gained by the stock that no row of it accounts for. */
    readonly gains: readonly SharedGain[];
    /** A line for each recipe that was changed itself, worst first; then new ones, then those that are gone. */
    readonly rows: readonly HeadRow[];
    /** Names of recipes that differ by their stock alone. */
    readonly byStock: readonly string[];
    /** Names of recipes in which nothing differs that matters. */
    readonly untouched: readonly string[];
}

export interface StockRow {
    readonly thing: ThingReview;
    /** The recipes that it reaches. */
    readonly recipes: readonly string[];
    /** What those gained by it that differ by their stock alone, worst first. */
    readonly gains: readonly SharedGain[];
}

export interface HeadRow {
    /** Index into the reviews. */
    readonly review: number;
    readonly name: string;
    readonly status: 'changed' | 'added' | 'removed';
    /** Worst first. */
    readonly consequences: readonly Consequence[];
}

/** One finding that several recipes gained by the stock alone. */
export interface SharedGain {
    readonly consequence: Consequence;
    readonly recipes: readonly string[];
}

export function nameOf({ before, after }: Review): string {
    return after.recipe ?? before.recipe ?? '';
}

/**
 * @param reviews as `withoutNoise` leaves them
 * @param untouched names of further recipes that the change does not reach
 */
export function headOf(reviews: readonly Review[], untouched: readonly string[] = []): ReviewHead {
    const differing = reviews.flatMap((review, index) => (review.same ? [] : [{ review, index, status: statusOf(review) }]));
    const own = differing.filter(({ review }) => isOneSided(review) || !isByStockAlone(review));
    const stock = sharedStock(reviews);
    const byStock = differing.filter((each) => !own.includes(each)).map(({ review }) => review);
    const { rows: told, left } = withGains(stock, gainsOf(byStock));
    const shared = new Set(stock.map(({ thing }) => JSON.stringify(thing)));
    const quiet = [...reviews.filter(({ same }) => same).map(nameOf), ...untouched];
    const rows = own.map(({ review, index, status }): HeadRow => {
        const rest = { ...review, things: review.things.filter((thing) => !shared.has(JSON.stringify(thing))) };
        return { review: index, name: nameOf(review), status, consequences: consequencesOf(rest) };
    });
    const gained = differing.flatMap(({ review }) => consequencesOf(review));
    const count = (status: string): number => differing.filter((each) => each.status === status).length;
    return {
        counts: { changed: count('changed'), added: count('added'), removed: count('removed'), untouched: quiet.length },
        gained: {
            error: gained.filter(({ kind }) => kind === 'error').length,
            warning: gained.filter(({ kind }) => kind === 'warning').length,
        },
        stock: told,
        gains: left,
        rows: ranked(rows, commonTexts(differing.map(({ review }) => review))),
        byStock: byStock.map(nameOf),
        untouched: quiet.toSorted(),
    };
}

/** A recipe that only one version has. */
export function isOneSided(review: Review): boolean {
    return statusOf(review) !== 'changed';
}

/** What differs, in the order of the head, then what the stock alone reaches; stock that the head has told is left out. */
export function inOrder({ rows, stock, byStock }: ReviewHead, reviews: readonly Review[]): Review[] {
    const shared = new Set(stock.map(({ thing }) => JSON.stringify(thing)));
    const below = new Set(byStock);
    return [
        ...rows.map(({ review }) => reviews[review]!),
        ...reviews.filter((review) => !review.same && !isOneSided(review) && below.has(nameOf(review))),
    ].map((review) => ({ ...review, things: review.things.filter((thing) => !shared.has(JSON.stringify(thing))) }));
}

function statusOf({ before, after }: Review): HeadRow['status'] {
    return before.recipe === undefined ? 'added' : after.recipe === undefined ? 'removed' : 'changed';
}

/** Nothing of the recipe itself was written otherwise, nor was its art drawn otherwise. */
function isByStockAlone({ recipe, things, steps, art, allows, runs }: Review): boolean {
    const isWritten =
        recipe.length + art.length + runs.length > 0 ||
        things.some(({ thing }) => thing.startsWith('blank ')) ||
        allows.some(({ status }) => status !== 'same') ||
        steps.some(
            ({ status, moved, settings, shifts }) =>
                moved || status === 'added' || status === 'removed' || settings.length > 0 || shifts !== undefined,
        );
    return !isWritten && things.length > 0;
}

function sharedStock(reviews: readonly Review[]): Omit<StockRow, 'gains'>[] {
    const all = reviews.flatMap((review) =>
        review.things.flatMap((thing) => (isStock(thing, review) ? [{ thing, name: nameOf(review) }] : [])),
    );
    return [...groupBy(all, ({ thing }) => JSON.stringify(thing)).values()]
        .filter((group) => group.length > 1)
        .map((group) => ({ thing: group[0]!.thing, recipes: group.map(({ name }) => name) }));
}

/** Of a recipe that is new or gone, what it uses is no change of the stock. */
function isStock({ thing }: ThingReview, review: Review): boolean {
    return statusOf(review) === 'changed' && !thing.startsWith('blank ');
}

/** What more than one recipe gained in the same words: it has its cause in the stock. */
function commonTexts(reviews: readonly Review[]): ReadonlySet<string> {
    const texts = reviews.flatMap((review) => [
        ...new Set(consequencesOf(review).flatMap(({ worked, text }) => (worked ? [text] : []))),
    ]);
    return new Set([...groupBy(texts, (text) => text)].filter(([, group]) => group.length > 2).map(([text]) => text));
}

const place = { changed: 0, added: 1, removed: 2 };

/** Worst first; in a row what only this recipe has goes before what it has with others. */
function ranked(rows: readonly HeadRow[], common: ReadonlySet<string>): HeadRow[] {
    const told = rows.map((row) => ({
        ...row,
        consequences: row.consequences
            .map((each) => ({ ...each, weight: weightIn(each, common) }))
            .toSorted((a, b) => b.weight - a.weight),
    }));
    const worst = ({ consequences: [first] }: HeadRow): number => first?.weight ?? 0;
    return told.toSorted((a, b) => place[a.status] - place[b.status] || worst(b) - worst(a) || (a.name < b.name ? -1 : 1));
}

function weightIn({ weight, text }: Consequence, common: ReadonlySet<string>): number {
    return common.has(text) ? Math.min(weight, 5) : weight;
}

/** What recipes gained that differ by their stock alone, once for each cause with the recipes that have it, worst first. */
function gainsOf(reviews: readonly Review[]): SharedGain[] {
    const all = reviews.flatMap((review) =>
        consequencesOf(review)
            .filter(({ weight }) => weight >= leastShared)
            .map((consequence) => ({ consequence, name: nameOf(review) })),
    );
    return [...groupBy(all, ({ consequence: { rule, text } }) => `${rule} ${text}`).values()]
        .map((group) => ({ consequence: group[0]!.consequence, recipes: [...new Set(group.map(({ name }) => name))] }))
        .toSorted((a, b) => b.consequence.weight - a.consequence.weight || b.recipes.length - a.recipes.length);
}

/** Warnings, and depths and fits that come out otherwise; notes of the stock are told in the recipes themselves. */
const leastShared = 40;

/** Each gain at the stock that it names, or else at the first that reaches all of its recipes; what is left stands alone. */
function withGains(
    stock: readonly Omit<StockRow, 'gains'>[],
    gains: readonly SharedGain[],
): { readonly rows: StockRow[]; readonly left: SharedGain[] } {
    const rows = stock.map((row) => ({ ...row, gains: [] as SharedGain[] }));
    const left: SharedGain[] = [];
    for (const gain of gains) {
        const reaching = rows.filter((row) => !isPriceAlone(row) && gain.recipes.every((name) => row.recipes.includes(name)));
        const named = reaching.find(({ thing: { thing } }) =>
            thing
                .split(' ')
                .slice(1)
                .some((word) => gain.consequence.text.includes(word)),
        );
        // What a resin's mix does to the depth: nothing. A depth goes by coupons and boards.
        const found = named ?? reaching.find(({ thing: { thing } }) => /^(?:coupon|board|veneer|laser) /.test(thing));
        if (found === undefined) left.push(gain);
        else found.gains.push(gain);
    }
    return { rows: rows.toSorted((a, b) => worth(b) - worth(a)), left };
}

function worth(row: StockRow): number {
    return isPriceAlone(row) ? -1 : (row.gains[0]?.consequence.weight ?? 0);
}

/** Stock that merely costs something else. */
export function isPriceAlone({ thing: { changes } }: Pick<StockRow, 'thing'>): boolean {
    return changes.every(({ label }) => label === 'price');
}
