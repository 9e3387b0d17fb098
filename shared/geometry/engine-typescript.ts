import { Clipper64, ClipType, FillRule as LibraryRule, type Path64, type Paths64 } from 'clipper2-ts';
import type { FillRule, Operation, PolygonEngine } from './polygon-engine';

const types: Readonly<Record<Operation, ClipType>> = {
    union: ClipType.Union,
    intersection: ClipType.Intersection,
    difference: ClipType.Difference,
    exclusion: ClipType.Xor,
};

const rules: Readonly<Record<FillRule, LibraryRule>> = {
    nonzero: LibraryRule.NonZero,
    evenodd: LibraryRule.EvenOdd,
    positive: LibraryRule.Positive,
};

/** clipper2-ts: always at hand, in every place the core runs. */
export const typescriptEngine: PolygonEngine = {
    name: 'clipper2-ts',
    combine(operation, rule, subjects, clips) {
        const clipper = new Clipper64();
        clipper.preserveCollinear = false;
        clipper.addSubject(subjects.map(toPath));
        if (clips.length > 0) clipper.addClip(clips.map(toPath));
        const solution: Paths64 = [];
        clipper.execute(types[operation], rules[rule], solution);
        return solution.map(fromPath);
    },
};

function toPath(ring: Float64Array): Path64 {
    const path: Path64 = new Array(ring.length / 2);
    for (let i = 0; i < path.length; i++) path[i] = { x: ring[2 * i]!, y: ring[2 * i + 1]! };
    return path;
}

function fromPath(path: Path64): Float64Array {
    const ring = new Float64Array(path.length * 2);
    for (let i = 0; i < path.length; i++) {
        const point = path[i]!;
        ring[2 * i] = point.x;
        ring[2 * i + 1] = point.y;
    }
    return ring;
}
