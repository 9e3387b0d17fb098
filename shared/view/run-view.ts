import type { Plan } from '../plan/plan';
import { type CostLine, costLines } from '../sheets/cost-lines';
import { type DayBookEntry, dayBook } from '../sheets/day-book';
import { type Readiness, readiness } from '../sheets/readiness';
import { unknownWood } from './unknown-wood';

/** The run of all the pieces as the bench view shows it. Times in s from the start, lengths in mm. */
export interface RunView {
    readonly ready: number;
    readonly attended: number;
    readonly idle: number;
    /** Hours of each day in which somebody works; absent: day and night. */
    readonly workday?: number;
    /** Only the first pieces are laid out; the figures are of all. */
    readonly scaled: boolean;
    readonly sittings: readonly DayBookEntry[];
    readonly notBefore: readonly Readiness[];
    readonly sheets: readonly SheetView[];
    readonly cost?: { readonly lines: readonly CostLine[]; readonly shop: string };
}

/** How one kind of sheet is cut. */
export interface SheetView {
    readonly name: string;
    readonly colour: string;
    readonly width: number;
    readonly height: number;
    /** The unit of length in which its size is written. */
    readonly unit: string;
    readonly count: number;
    /** Part of what is bought that ends up in blanks. */
    readonly used: number;
    readonly tooLarge: readonly string[];
    /** The first sheets, blank by blank. */
    readonly layouts: readonly (readonly {
        readonly name: string;
        readonly x: number;
        readonly y: number;
        readonly width: number;
        readonly height: number;
    }[])[];
}

/** Sheets drawn one by one; of more only the first are. */
const mostDrawn = 4;

export function makeRunView(plan: Plan): RunView {
    const { schedule, recipe, cost } = plan;
    const { ready, attended, idle, workday, scaled } = schedule;
    return {
        ready,
        attended,
        idle,
        ...(workday === undefined ? {} : { workday }),
        scaled,
        // A day book without what is not known would be too short.
        sittings: plan.unknown === undefined ? dayBook(plan) : [],
        notBefore: plan.unknown === undefined ? readiness(plan) : [],
        sheets: plan.cuttings.map(({ sheet, size, yielded }) => ({
            name: sheet.name,
            colour: sheet.wood?.colour ?? unknownWood.colour,
            ...size,
            unit: sheet.sheet?.width.unit ?? 'mm',
            count: yielded.sheets,
            used: yielded.used,
            tooLarge: yielded.tooLarge,
            layouts: yielded.layout.slice(0, mostDrawn),
        })),
        ...(cost === undefined ? {} : { cost: { lines: costLines(cost, recipe.make), shop: cost.shop } }),
    };
}
