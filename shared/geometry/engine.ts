import { combineApart } from './apart';
import { typescriptEngine } from './engine-typescript';
import { loadWasmEngine } from './engine-wasm';
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

let fast: PolygonEngine | undefined;

/** Combines rings in millimetres into a normalised region, by the library that suits their number of points. */
export function combine(operation: Operation, rule: FillRule, subjects: readonly Ring[], clips: readonly Ring[]): Region {
    const subject = onGrid(subjects);
    const clip = onGrid(clips);
    return { rings: combineApart(atHand, operation, rule, subject, clip).map(fromGrid) };
}

/** Whichever library is at hand, with the slower one behind the faster. */
const atHand: PolygonEngine = {
    get name() {
        return (fast ?? typescriptEngine).name;
    },
    combine(operation, rule, subjects, clips) {
        if (fast !== undefined) {
            try {
                return fast.combine(operation, rule, subjects, clips);
            } catch {
                // Its memory ends at 2 GiB; what has failed once is not to be trusted again.
                fast = undefined;
            }
        }
        return typescriptEngine.combine(operation, rule, subjects, clips);
    },
};

function onGrid(rings: readonly Ring[]): Float64Array[] {
    const clean: Float64Array[] = [];
    for (const ring of rings) {
        const units = toGrid(ring);
        if (units !== undefined) clean.push(units);
    }
    return clean;
}

/**
 * Makes the compiled polygon library ready; `binary` is its WebAssembly file
 * (clipper2-wasm/dist/umd/clipper2z.wasm). Without it, or where it cannot be loaded, everything
 * goes on working by the slower library. Never rejects; answers the name of the library in use.
 */
export async function prepareGeometry(wasm?: { readonly binary: Uint8Array }): Promise<string> {
    if (wasm !== undefined && fast === undefined) {
        try {
            fast = await loadWasmEngine(wasm.binary);
        } catch {
            // A place that forbids WebAssembly, or building functions from text.
        }
    }
    return (fast ?? typescriptEngine).name;
}
