import { type Combine, combineApart, takenApart } from './apart';
import { type Approach, approachTo } from './effort';
import { typescriptEngine } from './engine-typescript';
import { loadWasmEngine } from './engine-wasm';
import { fromGrid, toGrid } from './grid';
import type { FillRule, Operation, PolygonEngine } from './polygon-engine';
import { type Region, type Ring, tangledRegion } from './region';

let fast: PolygonEngine | undefined;

/** Below this many points the slower library is as fast, and stumbles less often over shapes that touch. */
const heavy = 500;

/** Combines rings in millimetres into a normalised region, or into `tangledRegion`. */
export function combine(operation: Operation, rule: FillRule, subjects: readonly Ring[], clips: readonly Ring[]): Region {
    return combineBoth([operation], rule, subjects, clips)[0]!;
}

/** The same rings combined in several ways, which costs less than one way after the other: how they lie is looked at once. */
export function combineBoth(
    operations: readonly Operation[],
    rule: FillRule,
    subjects: readonly Ring[],
    clips: readonly Ring[],
): Region[] {
    const apart = takenApart(onGrid(subjects), onGrid(clips));
    // By the first ring: rings that hang together come together each time.
    const approaches = new Map<Float64Array, Approach>();
    /** Has the library that suits their number of points combine rings; undefined if that would take too long. */
    const run: Combine = (operation, fill, some, others) => {
        const first = (some[0] ?? others[0])!;
        const approach = approaches.get(first) ?? approachTo(others.length === 0 ? some : [...some, ...others]);
        approaches.set(first, approach);
        if (approach === 'refuse') return undefined;
        if (approach === 'sweep down') return combineBy(operation, fill, some, others);
        return combineBy(operation, fill, some.map(laidOnSide), others.map(laidOnSide)).map(laidOnSide);
    };
    return operations.map((operation) => {
        const rings = combineApart(run, operation, rule, apart);
        return rings === undefined ? tangledRegion : { rings: rings.map(fromGrid) };
    });
}

function combineBy(operation: Operation, rule: FillRule, subjects: Rings, clips: Rings): Rings {
    if (fast !== undefined && pointsOf(subjects) + pointsOf(clips) >= heavy) {
        try {
            return fast.combine(operation, rule, subjects, clips);
        } catch {
            // Its memory ends at 2 GiB; what has failed once is not to be trusted again.
            fast = undefined;
        }
    }
    return typescriptEngine.combine(operation, rule, subjects, clips);
}

type Rings = readonly Float64Array[];

function pointsOf(rings: Rings): number {
    let numbers = 0;
    for (const ring of rings) numbers += ring.length;
    return numbers / 2;
}

/** x and y exchanged, and the order turned around to keep the sense of winding. */
function laidOnSide(ring: Float64Array): Float64Array {
    return ring.toReversed();
}

function onGrid(rings: readonly Ring[]): Rings {
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
