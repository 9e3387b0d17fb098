import { contentKey } from '../plan/content-key';
import type { Memo } from '../plan/memo';
import type { Plan } from '../plan/plan';
import type { Quantity } from '../quantity/quantity';
import type { Recipe } from '../recipe/recipe';
import type { Burn, Coupon, CutTest } from '../recipe/stock';
import { examineCoupons } from '../rules/coupon/examine-coupons';
import { changesOf } from './change';
import { type Figure, range, word } from './figure';
import type { ThingReview } from './review';
import { tell, writtenFigures } from './written';

/** Blanks that differ, and stock that both versions use but of which the figures differ. */
export function compareThings(before: Plan, after: Plan, memo: Memo): ThingReview[] {
    return [
        ...compare(blanks(before, after), blanks(after, before), true),
        ...compare(stock(before.recipe), stock(after.recipe), false),
        ...compare(coupons(before.recipe), coupons(after.recipe), true).map((each) => withFindings(each, before, after, memo)),
    ];
}

/** A coupon that was written otherwise, with what its squares say of each other now and did not before. */
function withFindings(review: ThingReview, before: Plan, after: Plan, memo: Memo): ThingReview {
    if (review.status !== 'changed') return review;
    const [then, now] = [before, after].map(({ recipe }) => {
        const coupon = recipe.coupons.find((each) => couponName(each) === review.thing);
        const sheet = recipe.blanks.map((blank) => blank.sheet).find((each) => each?.name === coupon?.sheet);
        const { laser } = recipe;
        if (coupon === undefined || sheet === undefined || laser === undefined) return [];
        return memo.get('coupon-findings', contentKey(coupon, laser, sheet), () => examineCoupons([{ coupon, laser, sheet }]));
    });
    const findings = now!
        .filter(({ rule, message }) => !then!.some((old) => old.rule === rule && old.message === message))
        .map(({ severity, message, rule }) => ({ severity, message, rule }));
    return findings.length === 0 ? review : { ...review, findings };
}

function couponName({ sheet, laser }: Coupon): string {
    return `coupon of ${sheet} on ${laser}`;
}

type Things = ReadonlyMap<string, readonly Figure[]>;

/** @param all whether a thing that only one version has is told; other stock is told where it is used. */
function compare(before: Things, after: Things, all: boolean): ThingReview[] {
    const reviews: ThingReview[] = [];
    for (const thing of new Set([...after.keys(), ...before.keys()])) {
        const old = before.get(thing);
        const now = after.get(thing);
        if (!all && (old === undefined || now === undefined)) continue;
        const changes = changesOf(old ?? [], now ?? []);
        if (old === undefined) reviews.push({ thing, status: 'added', changes });
        else if (now === undefined) reviews.push({ thing, status: 'removed', changes });
        else if (changes.length > 0) reviews.push({ thing, status: 'changed', changes });
    }
    return reviews;
}

/** Where a blank is cut out of another board, how thick that is; of one board the thickness is told among the stock. */
function blanks({ recipe, blanks: planned }: Plan, other: Plan): Things {
    return new Map(
        recipe.blanks.map((blank) => {
            const was = other.recipe.blanks.find(({ name }) => name === blank.name);
            const thickness = planned.find(({ name }) => name === blank.name)?.thickness;
            const isOther = was !== undefined && was.sheet?.name !== blank.sheet?.name && thickness !== undefined;
            return [`blank ${blank.name}`, [...writtenFigures(blank), ...(isOther ? [range('thickness', thickness)] : [])]];
        }),
    );
}

function coupons({ coupons: all }: Recipe): Things {
    return new Map(
        all.map((coupon) => {
            const { pitch, burnt, burns, tones = [], cuts = [] } = coupon;
            const figures: Figure[] = pitch === undefined ? [] : [{ label: 'pitch', ...tell(pitch)! }];
            if (burnt !== undefined) figures.push(word('burnt', burnt.value));
            for (const { depth, ...square } of burns) figures.push(squareFigure(square, depth));
            for (const { tone, ...square } of tones) figures.push(squareFigure(square, tone));
            for (const { gives, kerf, fits, ...square } of cuts) {
                figures.push(cutFigure(square, gives));
                if (kerf !== undefined) figures.push({ ...tell(kerf)!, label: cutLabel(square, 'kerf') });
                if (fits !== undefined) figures.push({ ...tell(fits)!, label: cutLabel(square, 'fits') });
            }
            return [couponName(coupon), figures];
        }),
    );
}

type Settings = Pick<Burn, 'power' | 'speed' | 'passes'>;

function cutLabel({ power, speed, passes }: Settings, what: string): string {
    return `cut ${tell(power)!.text} at ${tell(speed)!.text}${passes === 1 ? '' : ` x ${passes}`} ${what}`;
}

function cutFigure(square: Settings, gives: CutTest['gives']): Figure {
    const label = cutLabel(square, 'gives');
    return typeof gives === 'string' ? word(label, gives) : { ...tell(gives)!, label };
}

/** The settings are the label, so that a square measured again is a change and not two. */
function squareFigure({ power, speed, passes }: Pick<Burn, 'power' | 'speed' | 'passes'>, gives: Quantity): Figure {
    const times = passes === 1 ? '' : ` x ${passes}`;
    return {
        ...tell(gives)!,
        label: `${tell(power)!.text} at ${tell(speed)!.text}${times} gives${gives.dimension === 'ratio' ? ' tone' : ''}`,
    };
}

/** What each property of a recipe's data stands for in the shop. */
const kinds: Readonly<Record<string, string>> = {
    shop: 'shop',
    laser: 'laser',
    beam: 'beam',
    sheet: 'sheet',
    wood: 'wood',
    resin: 'resin',
    sealer: 'sealer',
    glue: 'glue',
    coat: 'finish',
    grits: 'grit',
};

/** All stock that a recipe uses, wherever it does. */
function stock(recipe: Recipe): Things {
    const found = new Map<string, readonly Figure[]>();
    const add = (key: string, thing: unknown): void => {
        if (typeof thing !== 'object' || thing === null || !('name' in thing) || !('where' in thing)) return;
        const kind = 'kind' in thing ? String(thing.kind) : undefined;
        const word_ = key === 'sheet' ? (kind ?? 'sheet') : kinds[key];
        const name = `${word_} ${String(thing.name)}`;
        if (found.has(name)) return;
        found.set(name, [...(kind === undefined || key === 'sheet' ? [] : [word('kind', kind)]), ...writtenFigures(thing)]);
        search(thing);
    };
    const search = (block: object): void => {
        for (const [key, value] of Object.entries(block)) {
            if (!(key in kinds)) continue;
            for (const each of Array.isArray(value) ? value : [value]) add(key, each);
        }
    };
    for (const block of [recipe, ...recipe.blanks, ...recipe.steps]) search(block);
    return found;
}
