import { type Offcut, offcutYield } from '../bench/offcut-yield';
import { type CutPiece, cutWidth, type LaidPiece, sheetYield } from '../bench/sheet-yield';
import { blanksToCut, takenOf } from '../plan/cutting';
import type { Supply } from '../plan/plan';
import { merged } from '../plan/supplies';
import { rackName, type Sheet } from '../recipe/stock';
import type { BookedPlan } from './booked-plan';

/** What was counted of one thing in the evening of a day. */
export interface CountedStock {
    /** As a shopping list calls it: of a resin also "tide-blue hardener". */
    readonly item: string;
    readonly kind: Supply['kind'];
    /** ISO 8601. */
    readonly counted: string;
    /** Sheets, g or mm3; absent where only offcuts were counted. */
    readonly amount?: number;
    readonly by: 'sheets' | 'mass' | 'volume';
    /** g/mm3, of what is counted by mass and used by volume, or the other way round. */
    readonly density?: number;
    readonly offcuts: readonly Offcut[];
}

/** What a run made since, with the plan of as many pieces as were begun. */
export interface SpentRun {
    readonly date: string;
    readonly plan: BookedPlan;
}

/** Whole sheets and offcuts of one kind. */
export interface Rack {
    readonly sheets: number;
    readonly offcuts: readonly Offcut[];
}

/** An offcut and what is cut out of it. */
export interface CutOffcut {
    readonly offcut: Offcut;
    readonly laid: readonly LaidPiece[];
}

/** What is left of a count once the runs after its day are taken off. */
export interface OnHand {
    readonly counted: string;
    /** In the unit of the supply; sheets are in the rack. */
    readonly amount: (supply: Pick<Supply, 'unit'>) => number | undefined;
    readonly rack: Rack;
}

/** More blanks of one sheet than this are not laid out one by one. */
export const mostLaid = 200;

/** What there is of everything that was counted, by kind and name. */
export function onHand(stock: readonly CountedStock[], runs: readonly SpentRun[]): ReadonlyMap<string, OnHand> {
    return new Map(
        stock.map((counted) => {
            const since = runs.filter(({ date }) => date > counted.counted).map(({ plan }) => plan);
            return [keyOf(counted), counted.by === 'sheets' ? ofSheets(counted, since) : ofFluid(counted, since)];
        }),
    );
}

export function keyOf({ kind, item }: Pick<Supply, 'kind' | 'item'>): string {
    return `${kind} ${item}`;
}

function ofFluid({ counted, amount = 0, by, density, ...of }: CountedStock, since: readonly BookedPlan[]): OnHand {
    const spent = merged(since.flatMap(({ supplies }) => supplies.filter((supply) => keyOf(supply) === keyOf(of))));
    const inUnit = (value: number, unit: Supply['unit']): number | undefined => {
        if (unit === 'g') return by === 'mass' ? value : density === undefined ? undefined : value * density;
        if (unit !== 'ml') return undefined;
        return by === 'volume' ? value / 1000 : density === undefined ? undefined : value / density / 1000;
    };
    return {
        counted,
        rack: { sheets: 0, offcuts: [] },
        amount: ({ unit }) => {
            const there = inUnit(amount, unit);
            const taken = spent.reduce((sum, each) => sum + (each.unit === unit ? each.amount : 0), 0);
            return there === undefined ? undefined : Math.max(0, there - taken);
        },
    };
}

function ofSheets({ counted, amount, offcuts, item }: CountedStock, since: readonly BookedPlan[]): OnHand {
    const blanks = since
        .flatMap((plan) => blanksToCut(plan.blanks, plan.recipe.make))
        .filter(({ sheet }) => rackName(sheet) === item);
    const sheet = blanks[0]?.sheet;
    const pieces = blanks.map(({ piece }) => piece);
    const before = { sheets: amount ?? 0, offcuts };
    const rack = sheet === undefined ? before : afterCutting(before, sheet, pieces);
    return { counted, rack, amount: ({ unit }) => (unit === 'sheets' && amount !== undefined ? rack.sheets : undefined) };
}

/** Offcuts first, the smallest before the others; what they do not hold is left. */
export function cutOffcuts(
    offcuts: readonly Offcut[],
    pieces: readonly CutPiece[],
    cut: number,
): { readonly used: readonly CutOffcut[]; readonly whole: readonly Offcut[]; readonly left: readonly CutPiece[] } {
    let left = pieces;
    const used: CutOffcut[] = [];
    const whole: Offcut[] = [];
    for (const offcut of offcuts.toSorted((a, b) => a.width * a.height - b.width * b.height)) {
        const tried = offcutYield(offcut, left, cut);
        left = tried.left;
        if (tried.laid.length === 0) whole.push(offcut);
        else used.push({ offcut, laid: tried.laid });
    }
    return { used, whole, left };
}

/** What is left of a rack: of an offcut that was cut into nothing, of the last sheet its end. */
function afterCutting({ sheets, offcuts }: Rack, { kind, sheet }: Sheet, pieces: readonly CutPiece[]): Rack {
    const cut = cutWidth[kind];
    const { whole, left } = cutOffcuts(offcuts, pieces, cut);
    if (sheet === undefined || left.length === 0) return { sheets, offcuts: whole };
    const size = { width: sheet.width.value, height: sheet.height.value };
    const yielded = sheetYield(size, left, cut, mostLaid);
    const last = yielded?.layout.at(-1);
    if (yielded === undefined || last === undefined) return { sheets, offcuts: whole };
    const rest = Math.max(0, sheets - yielded.sheets);
    const share = yielded.scaled || sheets < yielded.sheets ? 0 : 1 - takenOf(size, last, cut);
    if (share < leastKept) return { sheets: rest, offcuts: whole };
    const along = size.width >= size.height;
    const end: Offcut = along
        ? { width: share * size.width, height: size.height, grain: 'width' }
        : { width: size.width, height: share * size.height, grain: 'height' };
    return { sheets: rest, offcuts: [...whole, end] };
}

/** A smaller end of a sheet is not kept. @commonPractice */
const leastKept = 0.05;
