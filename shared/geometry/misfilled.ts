import { isInside } from './apart';
import type { FillRule, Operation } from './polygon-engine';

type Rings = readonly Float64Array[];

/** What an answer may stray by where its corners were rounded, in whole units; what is wrong by less is no hole. */
const rounding = 2;

/** Edges met at all levels together: every level of small art, some of heavy art. */
const leastLooks = 50_000;
const looksPerEdge = 8;

/** Whose edge it is: it decides which winding changes there. */
const subject = 0;
const clip = 1;
const answered = 2;

/**
 * How much of the plane (in square units) a polygon library's answer fills that it should not, or leaves out: the libraries can lose
 * or fill a small hole where corners and edges lie on each other. Looks along horizontals through the middle between any two corners or
 * crossings that follow each other downwards; on heavy art along evenly chosen ones. 0 for an answer that is off by rounding only.
 */
export function misfilled(operation: Operation, rule: FillRule, subjects: Rings, clips: Rings, answer: Rings): number {
    const edges = new Edges([subjects, clips, answer]);
    const { levels } = edges;
    let looks = leastLooks + looksPerEdge * edges.count;
    const stride = Math.max(1, Math.ceil(edges.looks() / looks));
    let wrong = 0;
    for (let i = 0; i + 1 < levels.length; i += stride) {
        const [above, below] = [levels[i]!, levels[i + 1]!];
        const active = edges.below(above);
        // The middle of a lower slab lies within rounding of a corner.
        if (below - above <= 2 * rounding) continue;
        const heights = looks > 0 ? crossingsBetween(edges, active, above, below) : [];
        heights.push(below);
        let from = above;
        for (const to of heights.sort((a, b) => a - b)) {
            if (to - from <= 2 * rounding) continue;
            looks -= active.length;
            wrong += wrongAlong(edges, active, from + (to - from) / 2, operation, rule) * (to - from) * stride;
            from = to;
        }
    }
    return wrong;
}

/** At what heights edges cross in between, by how their order changes. */
function crossingsBetween(edges: Edges, active: number[], above: number, below: number): number[] {
    sortAlong(edges, active, above);
    const found: number[] = [];
    sortAlong(edges, active, below, (a, b) => {
        const y = edges.crossing(a, b);
        if (y > above && y < below) found.push(y);
    });
    return found;
}

/** Puts edges in order from left to right; nearly in order already from the height before. Tells of each pair that is exchanged. */
function sortAlong(edges: Edges, active: number[], y: number, exchanged?: (a: number, b: number) => void): void {
    const { cut } = edges;
    for (const edge of active) cut[edge] = edges.xAt(edge, y);
    for (let i = 1; i < active.length; i++) {
        const edge = active[i]!;
        const x = cut[edge]!;
        let j = i;
        for (; j > 0 && cut[active[j - 1]!]! > x; j--) {
            exchanged?.(active[j - 1]!, edge);
            active[j] = active[j - 1]!;
        }
        active[j] = edge;
    }
}

/** Length along a horizontal on which inside and outside are exchanged. */
function wrongAlong(edges: Edges, active: number[], y: number, operation: Operation, rule: FillRule): number {
    sortAlong(edges, active, y);
    const windings = [0, 0, 0];
    let wrong = 0;
    for (let i = 0; i + 1 < active.length; i++) {
        const edge = active[i]!;
        windings[edges.whose[edge]!]! += edges.sense[edge]!;
        const width = edges.cut[active[i + 1]!]! - edges.cut[edge]!;
        if (width <= 2 * rounding) continue;
        const should = isInside(operation, rule, { subject: windings[subject]!, clip: windings[clip]! });
        if (should === (windings[answered] !== 0)) continue;
        const thick = Math.min(edges.steepness(edge), edges.steepness(active[i + 1]!)) * width;
        if (thick > 2 * rounding) wrong += width;
    }
    return wrong;
}

/** All edges that are not level, from the top down. */
class Edges {
    readonly count: number;
    /** Their numbers by their upper end. */
    readonly order: Uint32Array;
    readonly top: Float64Array;
    readonly bottom: Float64Array;
    readonly whose: Uint8Array;
    /** What a winding changes by from left to right. */
    readonly sense: Int8Array;
    /** Where each meets the level that is looked at. */
    readonly cut: Float64Array;
    /** Every height of a corner, once, downwards. */
    readonly levels: Float64Array;
    private readonly active: number[] = [];
    private next = 0;
    private readonly x: Float64Array;
    private readonly slope: Float64Array;

    constructor(kinds: readonly Rings[]) {
        let most = 0;
        for (const rings of kinds) for (const ring of rings) most += ring.length / 2;
        this.top = new Float64Array(most);
        this.bottom = new Float64Array(most);
        this.x = new Float64Array(most);
        this.slope = new Float64Array(most);
        this.cut = new Float64Array(most);
        this.whose = new Uint8Array(most);
        this.sense = new Int8Array(most);
        let count = 0;
        for (const [whose, rings] of kinds.entries()) for (const ring of rings) count = this.enter(ring, whose, count);
        this.count = count;
        const { top } = this;
        this.order = Uint32Array.from({ length: count }, (_, edge) => edge).sort((a, b) => top[a]! - top[b]!);
        const ends = new Float64Array(2 * count);
        ends.set(top.subarray(0, count));
        ends.set(this.bottom.subarray(0, count), count);
        ends.sort();
        let used = 0;
        for (const end of ends) if (used === 0 || end !== ends[used - 1]) ends[used++] = end;
        this.levels = ends.subarray(0, used);
    }

    /** The edges that go on below a height; heights have to be asked for downwards. */
    below(height: number): number[] {
        const { active, order, top, bottom } = this;
        let kept = 0;
        for (const edge of active) if (bottom[edge]! > height) active[kept++] = edge;
        active.length = kept;
        for (; this.next < this.count && top[order[this.next]!]! <= height; this.next++) {
            const edge = order[this.next]!;
            if (bottom[edge]! > height) active.push(edge);
        }
        return active;
    }

    /** Enters the edges of a ring from a number on; answers the next free one. */
    private enter(ring: Float64Array, whose: number, from: number): number {
        let count = from;
        let ax = ring[ring.length - 2]!;
        let ay = ring[ring.length - 1]!;
        for (let i = 0; i < ring.length; i += 2) {
            const bx = ring[i]!;
            const by = ring[i + 1]!;
            if (ay !== by) {
                this.top[count] = Math.min(ay, by);
                this.bottom[count] = Math.max(ay, by);
                this.x[count] = ay < by ? ax : bx;
                this.slope[count] = (bx - ax) / (by - ay);
                this.whose[count] = whose;
                this.sense[count++] = ay < by ? -1 : 1;
            }
            ax = bx;
            ay = by;
        }
        return count;
    }

    xAt(edge: number, y: number): number {
        return this.x[edge]! + (y - this.top[edge]!) * this.slope[edge]!;
    }

    /** The height at which the lines of two edges meet; not finite for parallel ones. */
    crossing(a: number, b: number): number {
        const y = this.top[a]!;
        return y + (this.xAt(b, y) - this.x[a]!) / (this.slope[a]! - this.slope[b]!);
    }

    /** 1 for an upright edge, near 0 for one that is almost level. */
    steepness(edge: number): number {
        return 1 / Math.hypot(1, this.slope[edge]!);
    }

    /** How many edges all levels meet together. */
    looks(): number {
        const { levels } = this;
        const perHeight = (levels.length - 1) / Math.max(1, levels.at(-1)! - levels[0]!);
        let sum = 0;
        for (let edge = 0; edge < this.count; edge++) sum += (this.bottom[edge]! - this.top[edge]!) * perHeight;
        return sum;
    }
}
