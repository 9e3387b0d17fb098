import { combine } from '../../shared/geometry/engine';
import { fromGrid, toGrid, unitsPerMillimetre } from '../../shared/geometry/grid';
import { area, perimeter } from '../../shared/geometry/measure';
import type { FillRule, Operation } from '../../shared/geometry/polygon-engine';
import { slabArea } from './slab-area';

const operations: readonly Operation[] = ['union', 'intersection', 'difference', 'exclusion'];
const rules: readonly FillRule[] = ['nonzero', 'evenodd', 'positive'];

/** Rings in whole units, and what is asked of them. */
export interface GridCase {
    readonly operation: Operation;
    readonly rule: FillRule;
    readonly subjects: Float64Array[];
    readonly clips: Float64Array[];
}

/** One to five rings of three to ten corners on each side, on a grid of 4 to 128 places by 0.01, 0.1 or 1 mm. */
export function randomCase(random: () => number): GridCase {
    const upTo = (most: number): number => Math.floor(random() * most);
    const places = Math.floor(4 * 2 ** (random() * 5));
    const step = [0.01, 0.1, 1][upTo(3)]!;
    const rings = (): Float64Array[] =>
        Array.from({ length: 1 + upTo(5) }, () =>
            Float64Array.from({ length: 2 * (3 + upTo(8)) }, () => upTo(places) * step),
        ).flatMap((ring) => toGrid(ring) ?? []);
    return { subjects: rings(), clips: rings(), operation: operations[upTo(4)]!, rule: rules[upTo(3)]! };
}

/** How far the area of the answer lies from the exact one, in parts of what rounding the corners may move. */
export function strayOf({ operation, rule, subjects, clips }: GridCase): number {
    const [some, others] = [subjects.map(fromGrid), clips.map(fromGrid)];
    const exact = slabArea(operation, rule, subjects, clips) / unitsPerMillimetre ** 2;
    const slack = (perimeter({ rings: [...some, ...others] }) + 0.01) / unitsPerMillimetre;
    return Math.abs(area(combine(operation, rule, some, others)) - exact) / slack;
}

/** Squares of 10 units in rows and columns, 5 apart. */
export function islandOfSquares(across: number): Float64Array[] {
    return Array.from({ length: across * across }, (_, k) => {
        const [x, y] = [15 * (k % across), 15 * Math.floor(k / across)];
        return Float64Array.of(x, y, x + 10, y, x + 10, y + 10, x, y + 10);
    });
}
