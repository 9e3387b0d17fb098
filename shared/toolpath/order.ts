import type { Region, Ring } from '../geometry/region';
import { depths, parents } from './nesting';
import { type Path, pathOfRing } from './path';
import type { BlankPoint } from './place';
import { tour } from './tour';

/**
 * Rings in the order in which they are followed: what lies inside goes before what is around it, so
 * that nothing is cut loose before it is done; between rings side by side the way is short. Each starts
 * at its point nearest to where the head comes from. `make` may turn a ring into a path of another kind.
 */
export function orderRings(
    region: Region,
    from: BlankPoint = { x: 0, y: 0 },
    make: (ring: Ring, start: number, depth: number) => Path = pathOfRing,
): Path[] {
    const rings = usableRings(region);
    const parent = parents(rings);
    const depth = depths(parent);
    const children: number[][] = rings.map(() => []);
    const roots: number[] = [];
    parent.forEach((owner, i) => {
        (owner < 0 ? roots : children[owner]!).push(i);
    });
    const paths: Path[] = [];
    let at = from;
    const follow = (siblings: readonly number[]): void => {
        for (const index of shortWay(rings, siblings, at)) {
            if (children[index]!.length > 0) follow(children[index]!);
            const path = make(rings[index]!, nearestPoint(rings[index]!, at), depth[index]!);
            paths.push(path);
            at = { x: path.points[path.points.length - 2]!, y: path.points[path.points.length - 1]! };
        }
    };
    follow(roots);
    return paths;
}

/** Rings that enclose something, within any field. */
export function usableRings(region: Region): Ring[] {
    return region.rings.filter(
        (ring) => ring.length >= 6 && ring.length % 2 === 0 && ring.every((value) => Math.abs(value) < 1e9),
    );
}

/** Length (mm) travelled without burning from path to path. */
export function travelLength(paths: readonly Path[], from: BlankPoint = { x: 0, y: 0 }): number {
    let length = 0;
    let { x, y } = from;
    for (const { points } of paths) {
        length += Math.hypot(points[0]! - x, points[1]! - y);
        x = points[points.length - 2]!;
        y = points[points.length - 1]!;
    }
    return length;
}

function shortWay(rings: readonly Ring[], indices: readonly number[], from: BlankPoint): number[] {
    if (indices.length < 2) return [...indices];
    const xs = new Float64Array(indices.length);
    const ys = new Float64Array(indices.length);
    indices.forEach((index, i) => {
        const ring = rings[index]!;
        let [x, y] = [0, 0];
        for (let k = 0; k < ring.length; k += 2) {
            x += ring[k]!;
            y += ring[k + 1]!;
        }
        xs[i] = (2 * x) / ring.length;
        ys[i] = (2 * y) / ring.length;
    });
    return Array.from(tour(xs, ys, from.x, from.y), (i) => indices[i]!);
}

function nearestPoint(ring: Ring, { x, y }: BlankPoint): number {
    let best = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < ring.length; i += 2) {
        const distance = (ring[i]! - x) ** 2 + (ring[i + 1]! - y) ** 2;
        if (distance < least) [best, least] = [i / 2, distance];
    }
    return best;
}
