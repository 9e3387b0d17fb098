import Flatbush from 'flatbush';
import type { Region } from '../geometry/region';

/** A stretch of a patch's edge: the patch on its inner side, and the one beyond it; none where the piece ends. Places in mm. */
export interface Edge {
    readonly of: number;
    readonly beyond: number | undefined;
    readonly from: Place;
    readonly to: Place;
}

export interface Place {
    readonly x: number;
    readonly y: number;
    /** Where the edge's outer side looks to at this corner; longer than 1 where it has to reach into a corner. */
    readonly outX: number;
    readonly outY: number;
}

/** Corners lie on this grid, 0.1 um. */
const perMm = 1e4;
/** What was cut on that grid may lie this many of its steps beside an edge and is still a corner of it. */
const beside = 1.5;
/** How far a sharp corner is followed, as a multiple of the distance to its edges. */
const longestMitre = 2;

/**
 * The edges of disjoint regions that fill a part of the plane, cut where a neighbour has a corner, so that each stretch has one neighbour.
 * Where the grid has parted two edges by more than a step, both are told as ends of the piece. O(n log n) in the corners.
 */
export function edgesBetween(regions: readonly Region[]): Edge[] {
    const corners = new Corners(regions);
    const owners = new Map<number, number>();
    const stretches: Stretch[] = [];
    regions.forEach((region, of) => {
        const own = stretchesOf(region, of, corners);
        // A sliver that the grid has closed to a line goes there and back: it has no width, and hides what lies on both sides of it.
        const ways = new Set(own.map(({ a, b }) => a * corners.size + b));
        for (const one of own) {
            if (ways.has(one.b * corners.size + one.a)) continue;
            owners.set(one.a * corners.size + one.b, of);
            stretches.push(one);
        }
    });
    return stretches.map(({ of, a, b, from, to }) => ({ of, beyond: owners.get(b * corners.size + a), from, to }));
}

/** A stretch between two corners, by their numbers. */
interface Stretch {
    readonly of: number;
    readonly a: number;
    readonly b: number;
    readonly from: Place;
    readonly to: Place;
}

function stretchesOf({ rings }: Region, of: number, corners: Corners): Stretch[] {
    const stretches: Stretch[] = [];
    for (const ring of rings) {
        const ways = waysOut(ring);
        const count = ring.length / 2;
        for (let i = 0; i < count; i++) {
            const j = (i + 1) % count;
            const ids = corners.along(ring[2 * i]!, ring[2 * i + 1]!, ring[2 * j]!, ring[2 * j + 1]!);
            const straight = { outX: ways.normals[2 * i]!, outY: ways.normals[2 * i + 1]! };
            for (let k = 0; k + 1 < ids.length; k++) {
                const [a, b] = [ids[k]!, ids[k + 1]!];
                const from = { ...corners.place(a), ...(k === 0 ? ways.at(i) : straight) };
                const to = { ...corners.place(b), ...(k + 2 === ids.length ? ways.at(j) : straight) };
                stretches.push({ of, a, b, from, to });
            }
        }
    }
    return stretches;
}

/** All corners, each once. */
class Corners {
    private readonly ids = new Map<number, number>();
    private readonly xs: number[] = [];
    private readonly ys: number[] = [];
    private readonly tree: Flatbush | undefined;

    constructor(regions: readonly Region[]) {
        for (const { rings } of regions)
            for (const ring of rings) for (let i = 0; i < ring.length; i += 2) this.idOf(ring[i]!, ring[i + 1]!);
        if (this.size === 0) return;
        const tree = new Flatbush(this.size);
        for (let i = 0; i < this.size; i++) tree.add(this.xs[i]!, this.ys[i]!);
        tree.finish();
        this.tree = tree;
    }

    get size(): number {
        return this.xs.length;
    }

    place(id: number): { readonly x: number; readonly y: number } {
        return { x: this.xs[id]! / perMm, y: this.ys[id]! / perMm };
    }

    /** The corners that lie on an edge, its ends among them, in the order of the way. */
    along(fromX: number, fromY: number, toX: number, toY: number): number[] {
        const a = this.idOf(fromX, fromY);
        const b = this.idOf(toX, toY);
        if (a === b) return [];
        const [ax, ay, bx, by] = [this.xs[a]!, this.ys[a]!, this.xs[b]!, this.ys[b]!];
        const [dx, dy] = [bx - ax, by - ay];
        const square = dx * dx + dy * dy;
        const reach = beside * Math.sqrt(square);
        const on: { id: number; part: number }[] = [];
        const [left, right] = ax < bx ? [ax, bx] : [bx, ax];
        const [top, bottom] = ay < by ? [ay, by] : [by, ay];
        this.tree?.search(left - beside, top - beside, right + beside, bottom + beside, (id) => {
            const [px, py] = [this.xs[id]! - ax, this.ys[id]! - ay];
            const part = px * dx + py * dy;
            if (id !== a && id !== b && part > 0 && part < square && Math.abs(px * dy - py * dx) <= reach) on.push({ id, part });
            return false;
        });
        on.sort((one, other) => one.part - other.part);
        return [a, ...on.map(({ id }) => id), b];
    }

    private idOf(x: number, y: number): number {
        const [gx, gy] = [Math.round(x * perMm), Math.round(y * perMm)];
        const key = gx * 2 ** 26 + gy;
        const known = this.ids.get(key);
        if (known !== undefined) return known;
        const id = this.xs.length;
        this.ids.set(key, id);
        this.xs.push(gx);
        this.ys.push(gy);
        return id;
    }
}

/** Unit vectors across each edge of a ring, to its outer side, and at each corner the mitre of both edges. */
function waysOut(ring: Float64Array): { normals: Float64Array; at(corner: number): { outX: number; outY: number } } {
    const count = ring.length / 2;
    const normals = new Float64Array(ring.length);
    for (let i = 0; i < count; i++) {
        const j = (i + 1) % count;
        const dx = ring[2 * j]! - ring[2 * i]!;
        const dy = ring[2 * j + 1]! - ring[2 * i + 1]!;
        const length = Math.hypot(dx, dy) || 1;
        normals[2 * i] = dy / length;
        normals[2 * i + 1] = -dx / length;
    }
    return {
        normals,
        at(corner) {
            const before = (corner + count - 1) % count;
            const x = normals[2 * before]! + normals[2 * corner]!;
            const y = normals[2 * before + 1]! + normals[2 * corner + 1]!;
            const half = (x * x + y * y) / 2;
            const length = Math.hypot(x, y);
            const scale = half < 1e-9 ? 0 : Math.min(1 / half, longestMitre / length);
            return { outX: x * scale, outY: y * scale };
        },
    };
}
