import type { FillRule, Operation, PolygonEngine } from './polygon-engine';

/**
 * The parts of clipper2-wasm that are used. Its own types lean on the whole of Emscripten's; every
 * object lives in the library's memory until it is deleted.
 */
interface Library {
    readonly FillRule: { readonly EvenOdd: unknown; readonly NonZero: unknown; readonly Positive: unknown };
    readonly ClipType: {
        readonly Intersection: unknown;
        readonly Union: unknown;
        readonly Difference: unknown;
        readonly Xor: unknown;
    };
    readonly Path64: new () => LibraryPath;
    readonly Paths64: new () => LibraryPaths;
    CreateClipper64(preserveCollinear: boolean): LibraryClipper;
}

interface Deletable {
    delete(): void;
}

interface LibraryPath extends Deletable {
    /** Three 64-bit numbers a point: x, y and a label. */
    assign(coordinates: BigInt64Array): void;
    view(): BigInt64Array;
}

interface LibraryPaths extends Deletable {
    push_back(path: LibraryPath): void;
    size(): number;
    get(index: number): LibraryPath;
}

interface LibraryClipper extends Deletable {
    AddSubject(paths: LibraryPaths): void;
    AddClip(paths: LibraryPaths): void;
    ExecutePath(operation: unknown, rule: unknown, solution: LibraryPaths): boolean;
}

/** 32-bit halves of one point: x, y and the label, low half first. */
const halves = 6;

/**
 * clipper2-wasm: the original, compiled; several times as fast on heavy art. Rejects where the
 * WebAssembly or the functions that its glue builds from text are forbidden.
 */
export async function loadWasmEngine(binary: Uint8Array): Promise<PolygonEngine> {
    const { default: start } = await import('clipper2-wasm/dist/umd/clipper2z.js');
    const library: Library = await start({ wasmBinary: binary, print: ignore, printErr: ignore });
    return {
        name: 'clipper2-wasm',
        combine: (operation, rule, subjects, clips) => combine(library, operation, rule, subjects, clips),
    };
}

function ignore(): void {}

function combine(
    library: Library,
    operation: Operation,
    rule: FillRule,
    subjects: readonly Float64Array[],
    clips: readonly Float64Array[],
): Float64Array[] {
    const owned: Deletable[] = [];
    try {
        const clipper = library.CreateClipper64(false);
        owned.push(clipper);
        const subject = toLibrary(library, subjects);
        owned.push(subject);
        clipper.AddSubject(subject);
        if (clips.length > 0) {
            const clip = toLibrary(library, clips);
            owned.push(clip);
            clipper.AddClip(clip);
        }
        const solution = new library.Paths64();
        owned.push(solution);
        clipper.ExecutePath(typeOf(library, operation), ruleOf(library, rule), solution);
        return fromLibrary(solution);
    } finally {
        for (const object of owned) object.delete();
    }
}

function typeOf({ ClipType }: Library, operation: Operation): unknown {
    switch (operation) {
        case 'union':
            return ClipType.Union;
        case 'intersection':
            return ClipType.Intersection;
        case 'difference':
            return ClipType.Difference;
        case 'exclusion':
            return ClipType.Xor;
    }
}

function ruleOf({ FillRule }: Library, rule: FillRule): unknown {
    return rule === 'nonzero' ? FillRule.NonZero : rule === 'evenodd' ? FillRule.EvenOdd : FillRule.Positive;
}

/** Whole units fit 32 bits (grid.ts), so the 64-bit numbers are written as two halves: ten times as fast as BigInt. */
function toLibrary(library: Library, rings: readonly Float64Array[]): LibraryPaths {
    const paths = new library.Paths64();
    const path = new library.Path64();
    for (const ring of rings) {
        const numbers = new Int32Array((ring.length / 2) * halves);
        for (let i = 0, j = 0; i < ring.length; i += 2, j += halves) {
            const x = ring[i]!;
            const y = ring[i + 1]!;
            numbers[j] = x;
            numbers[j + 1] = x < 0 ? -1 : 0;
            numbers[j + 2] = y;
            numbers[j + 3] = y < 0 ? -1 : 0;
        }
        path.assign(new BigInt64Array(numbers.buffer));
        paths.push_back(path);
    }
    path.delete();
    return paths;
}

function fromLibrary(paths: LibraryPaths): Float64Array[] {
    const rings: Float64Array[] = [];
    const count = paths.size();
    for (let k = 0; k < count; k++) {
        const path = paths.get(k);
        const view = path.view();
        const numbers = new Int32Array(view.buffer, view.byteOffset, view.length * 2);
        const ring = new Float64Array((numbers.length / halves) * 2);
        for (let i = 0, j = 0; i < ring.length; i += 2, j += halves) {
            ring[i] = numbers[j]!;
            ring[i + 1] = numbers[j + 2]!;
        }
        path.delete();
        rings.push(ring);
    }
    return rings;
}
