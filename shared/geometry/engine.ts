import { type Combine, combineApart, takenApart } from './apart';
import { type Approach, approachTo } from './effort';
import { typescriptEngine } from './engine-typescript';
import { loadWasmEngine } from './engine-wasm';
import { fromGrid, toGrid } from './grid';
import { misfilled } from './misfilled';
import type { FillRule, Operation, PolygonEngine } from './polygon-engine';
import { type Region, type Ring, tangledRegion } from './region';

let fast: PolygonEngine | undefined;

/** With fewer points there is little to be gained from the compiled library, which stumbles more often over shapes that touch; from here on it takes half as long. */
const heavy = 100;

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
    const run: Combine = (operation, fill, some, others) => {
        const first = (some[0] ?? others[0])!;
        const approach = approaches.get(first) ?? approachTo(others.length === 0 ? some : [...some, ...others]);
        approaches.set(first, approach);
        return approach === 'refuse' ? undefined : combineSurely(approach, operation, fill, some, others);
    };
    return operations.map((operation) => {
        const rings = combineApart(run, operation, rule, apart);
        return rings === undefined ? tangledRegion : { rings: rings.map(fromGrid) };
    });
}

/**
 * Has the library that suits their number of points combine rings. An answer that fills or leaves out what it should not is made
 * again with the axes turned, and by the other library: of 60,000 random cases on a grid, each of the 168 wrong answers is right in another way.
 */
function combineSurely(approach: Approach, operation: Operation, rule: FillRule, subjects: Rings, clips: Rings): Rings {
    const points = pointsOf(subjects) + pointsOf(clips);
    const library = points >= heavy && fast !== undefined ? fast : typescriptEngine;
    const answer = combineTurned(library, approach === 'sweep down' ? asItLies : onItsSide, operation, rule, subjects, clips);
    if (points > mostChecked) return answer;
    const amiss = misfilled(operation, rule, subjects, clips, answer);
    return amiss === 0 ? answer : combineOtherwise(answer, amiss, operation, rule, subjects, clips);
}

/** Of more points that hang together another try is likely to be wrong in another place, and looking takes as long as combining. */
const mostChecked = 5000;

/** Tries other ways until one fills what it should; otherwise the answer that strays least. */
function combineOtherwise(
    first: Rings,
    amiss: number,
    operation: Operation,
    rule: FillRule,
    subjects: Rings,
    clips: Rings,
): Rings {
    let best = first;
    let least = amiss;
    for (const library of fast === undefined ? [typescriptEngine] : [typescriptEngine, fast]) {
        for (const turn of [onItsSide, slanted, slantedOnItsSide, turnedByHalf]) {
            const answer = combineTurned(library, turn, operation, rule, subjects, clips);
            const wrong = misfilled(operation, rule, subjects, clips, answer);
            if (wrong === 0) return answer;
            if (wrong < least) [best, least] = [answer, wrong];
        }
    }
    return best;
}

function combineTurned(
    library: PolygonEngine,
    { turn, back }: Turn,
    operation: Operation,
    rule: FillRule,
    subjects: Rings,
    clips: Rings,
): Rings {
    const turned = { subjects: subjects.map(turn), clips: clips.map(turn) };
    if (library === fast) {
        try {
            return fast.combine(operation, rule, turned.subjects, turned.clips).map(back);
        } catch {
            // Its memory ends at 2 GiB; what has failed once is not to be trusted again.
            fast = undefined;
        }
    }
    return typescriptEngine.combine(operation, rule, turned.subjects, turned.clips).map(back);
}

/** A way to lay rings under the sweep, and back. */
interface Turn {
    readonly turn: (ring: Float64Array) => Float64Array;
    readonly back: (ring: Float64Array) => Float64Array;
}

const asItLies: Turn = { turn: (ring) => ring, back: (ring) => ring };
/** x and y exchanged, and the order turned around to keep the sense of winding. */
const onItsSide: Turn = { turn: (ring) => ring.toReversed(), back: (ring) => ring.toReversed() };
/** Levels stay level, but what lay on an upright does not any more. */
const slanted: Turn = { turn: (ring) => leaning(ring, 1), back: (ring) => leaning(ring, -1) };
const slantedOnItsSide: Turn = {
    turn: (ring) => leaning(ring.toReversed(), 1),
    back: (ring) => leaning(ring, -1).toReversed(),
};
const turnedByHalf: Turn = { turn: (ring) => ring.map(negated), back: (ring) => ring.map(negated) };

/** Each point moved across by its own height, so that areas and whole units stay. */
function leaning(ring: Float64Array, by: number): Float64Array {
    return ring.map((value, i) => (i % 2 === 0 ? value + by * ring[i + 1]! : value));
}

function negated(value: number): number {
    return 0 - value;
}

type Rings = readonly Float64Array[];

function pointsOf(rings: Rings): number {
    let numbers = 0;
    for (const ring of rings) numbers += ring.length;
    return numbers / 2;
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
