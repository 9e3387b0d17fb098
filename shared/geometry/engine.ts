import { typescriptEngine } from './engine-typescript';
import { fromGrid, toGrid } from './grid';
import type { Region, Ring } from './region';

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

let engine: PolygonEngine = typescriptEngine;

/** Combines rings in millimetres into a normalised region, by the library at hand. */
export function combine(operation: Operation, rule: FillRule, subjects: readonly Ring[], clips: readonly Ring[]): Region {
    const answer = engine.combine(operation, rule, onGrid(subjects), onGrid(clips));
    return { rings: answer.map(fromGrid) };
}

function onGrid(rings: readonly Ring[]): Float64Array[] {
    const clean: Float64Array[] = [];
    for (const ring of rings) {
        const units = toGrid(ring);
        if (units !== undefined) clean.push(units);
    }
    return clean;
}

/**
 * Makes the compiled polygon library ready; `binary` is its WebAssembly file. Without it, or
 * where it cannot be loaded, everything goes on working by the slower library.
 */
export async function prepareGeometry(_wasm?: { readonly binary: Uint8Array }): Promise<void> {
    engine = typescriptEngine;
}
