export type Operation = 'union' | 'intersection' | 'difference' | 'exclusion';

/**
 * Which windings are inside. `positive` counts windings with their sign, which is what the raw
 * outlines of offset.ts need; art only ever has the other two.
 */
export type FillRule = 'nonzero' | 'evenodd' | 'positive';

/**
 * A polygon library, reduced to the one thing that is asked of it. Rings are closed, in whole
 * units (grid.ts), and cleaned; the answer's rings neither cross themselves nor each other, outer
 * ones with positive signed area, holes with negative.
 */
export interface PolygonEngine {
    readonly name: string;
    combine(
        operation: Operation,
        rule: FillRule,
        subjects: readonly Float64Array[],
        clips: readonly Float64Array[],
    ): Float64Array[];
}
