import { isInside } from './apart';
import { roomFor } from './edge-memory';
import type { FillRule, Operation } from './polygon-engine';

type Rings = readonly Float64Array[];

/** What an answer may stray by where its corners were rounded, in whole units; what is wrong by less is no hole. */
const rounding = 2;

/** Two edges nearer to each other than this may be one edge, rounded twice. */
const wide = 2 * rounding;

/** What sums of doubles may differ by where two edges lie on one line. */
const noise = 0.001;

/** Edges met at all levels together: every level of small art, some of heavy art. */
const leastLooks = 50_000;
const looksPerEdge = 8;

/** Whose edge it is: it decides which winding changes there. */
const subject = 0;
const clip = 1;
const answered = 2;

/**
 * How much of the plane (in square units) a polygon library's answer fills that it should not, or leaves out: the libraries can lose
 * or fill a small hole where corners and edges lie on each other. Follows all edges downwards, from corner to corner, and looks along a
 * horizontal where faces begin, meet, cross or end: in between, what is right stays right. On heavy art evenly chosen horizontals are
 * looked at. 0 for an answer that is off by rounding only.
 */
export function misfilled(operation: Operation, rule: FillRule, subjects: Rings, clips: Rings, answer: Rings): number {
    const edges = new Edges([subjects, clips, answer]);
    const along = new Along(edges, operation, rule);
    let looks = leastLooks + looksPerEdge * edges.count;
    const levels = edges.meet(edges.count) > looks ? edges.levels() : undefined;
    const stride = levels === undefined ? 1 : Math.max(1, Math.ceil(edges.meet(levels.length) / looks));
    let wrong = 0;
    let above = edges.first();
    for (let i = stride; ; i += stride) {
        const begun = edges.goOn(above) || stride > 1;
        const below = edges.nextLevel;
        if (below === Number.POSITIVE_INFINITY) return wrong * stride;
        const changed = edges.moveTo(above, below, begun);
        if (below - above <= wide) {
            // The middle of a lower slab lies within rounding of a corner.
            along.unsure ||= changed;
        } else if (changed || along.unsure) {
            along.unsure = edges.changedBelow;
            const heights = looks > 0 ? edges.crossings : [];
            looks -= edges.active.length * (heights.length + 1);
            wrong += along.wrongBetween(above, below, heights);
        }
        above = stride === 1 ? below : (levels![i] ?? below);
    }
}

/** Looks along horizontals. */
class Along {
    /** Whether the next slab has to be looked at even if nothing changes in it: something was wrong, or too thin to be called so. */
    unsure = false;
    private readonly cut: Float64Array;

    constructor(
        private readonly edges: Edges,
        private readonly operation: Operation,
        private readonly rule: FillRule,
    ) {
        this.cut = new Float64Array(edges.count);
    }

    /** How much of the slab between two levels is wrong; edges cross in it at the heights. */
    wrongBetween(above: number, below: number, heights: number[]): number {
        heights.push(below);
        let wrong = 0;
        let from = above;
        for (const to of heights.sort((a, b) => a - b)) {
            if (to - from <= wide) continue;
            wrong += this.wrongAt(from + (to - from) / 2) * (to - from);
            from = to;
        }
        return wrong;
    }

    /** Length along a horizontal on which inside and outside are exchanged. */
    private wrongAt(y: number): number {
        const { edges, cut, operation, rule } = this;
        const active = edges.active.slice();
        for (const edge of active) cut[edge] = edges.xAt(edge, y);
        putInOrder(active, cut);
        const windings = [0, 0, 0];
        let wrong = 0;
        for (let i = 0; i + 1 < active.length; i++) {
            const edge = active[i]!;
            windings[edges.whose[edge]!]! += edges.sense[edge]!;
            const width = cut[active[i + 1]!]! - cut[edge]!;
            if (width <= wide) continue;
            const should = isInside(operation, rule, { subject: windings[subject]!, clip: windings[clip]! });
            if (should === (windings[answered] !== 0)) continue;
            this.unsure = true;
            const thick = Math.min(edges.steepness(edge), edges.steepness(active[i + 1]!)) * width;
            if (thick > wide) wrong += width;
        }
        return wrong;
    }
}

/** Puts edges, nearly in order already, in the order of their cuts. Tells of each pair that is exchanged. */
function putInOrder(active: number[], cut: Float64Array, exchanged?: (a: number, b: number) => void): void {
    for (let i = 1; i < active.length; i++) {
        const edge = active[i]!;
        const x = cut[edge]! + noise;
        let j = i;
        for (; j > 0 && cut[active[j - 1]!]! > x; j--) {
            exchanged?.(active[j - 1]!, edge);
            active[j] = active[j - 1]!;
        }
        active[j] = edge;
    }
}

/** No edge goes on from here. */
const none = -1;

/** All edges that are not level, followed from the top down. */
class Edges {
    count = 0;
    readonly whose: Int8Array;
    /** What a winding changes by from left to right. */
    readonly sense: Int8Array;
    /** The edges that run through the slab, from left to right at its lower end. */
    readonly active: number[] = [];
    /** The heights in the slab at which edges cross. */
    crossings: number[] = [];
    /** Whether something meets, parts or crosses above the lower end of the slab or at it. */
    changedBelow = false;
    /** The next height at which an edge ends or begins; infinite below all. */
    nextLevel = Number.POSITIVE_INFINITY;
    private readonly top: Float64Array;
    private readonly bottom: Float64Array;
    private readonly x: Float64Array;
    private readonly slope: Float64Array;
    /** Where each meets the upper and the lower end of the slab. */
    private readonly was: Float64Array;
    private readonly cut: Float64Array;
    /** The edge that goes on where one ends. */
    private readonly after: Int32Array;
    /** Those that go on from none, from the top down. */
    private readonly starts: number[] = [];
    private started = 0;
    /** Whether there is room between an active edge and the next, at the lower end. */
    private readonly room: boolean[] = [];

    constructor(kinds: readonly Rings[]) {
        let most = 0;
        for (const rings of kinds) for (const ring of rings) most += ring.length / 2;
        const { numbers, whole, small } = roomFor(most);
        this.top = numbers.subarray(0, most);
        this.bottom = numbers.subarray(most, 2 * most);
        this.x = numbers.subarray(2 * most, 3 * most);
        this.slope = numbers.subarray(3 * most, 4 * most);
        this.was = numbers.subarray(4 * most, 5 * most);
        this.cut = numbers.subarray(5 * most, 6 * most);
        this.after = whole.subarray(0, most);
        this.whose = small.subarray(0, most);
        this.sense = small.subarray(most, 2 * most);
        const goesOn = small.subarray(2 * most, 3 * most);
        for (const [whose, rings] of kinds.entries()) {
            for (const ring of rings) this.count = this.enter(ring, whose, this.count, goesOn);
        }
        for (let edge = 0; edge < this.count; edge++) if (goesOn[edge] === 0) this.starts.push(edge);
        const { top } = this;
        this.starts.sort((a, b) => top[a]! - top[b]!);
    }

    /** The height of the highest corner. */
    first(): number {
        return this.starts.length === 0 ? 0 : this.top[this.starts[0]!]!;
    }

    /** Every height at which edges begin or end, once, downwards. */
    levels(): Float64Array {
        const heights = new Float64Array(2 * this.count);
        heights.set(this.top.subarray(0, this.count));
        heights.set(this.bottom.subarray(0, this.count), this.count);
        heights.sort();
        let used = 0;
        for (const height of heights) if (used === 0 || height !== heights[used - 1]) heights[used++] = height;
        return heights.subarray(0, used);
    }

    /**
     * Goes on below a height: takes out the edges that end above or at it, goes on with those that follow, and begins others. Heights
     * have to be asked for downwards. Answers whether any began or ended.
     */
    goOn(height: number): boolean {
        const { active, top, bottom, starts, cut } = this;
        const before = active.length;
        let next = Number.POSITIVE_INFINITY;
        let kept = 0;
        for (const edge of active) {
            let here = edge;
            if (bottom[edge]! <= height) {
                here = this.followed(edge, height);
                if (here === none) continue;
                cut[here] = cut[edge]!;
            }
            active[kept++] = here;
            if (bottom[here]! < next) next = bottom[here]!;
        }
        active.length = kept;
        let changed = kept < before;
        for (; this.started < starts.length && top[starts[this.started]!]! <= height; this.started++) {
            const here = this.followed(starts[this.started]!, height);
            if (here === none) continue;
            cut[here] = this.xAt(here, height);
            active.push(here);
            changed = true;
            if (bottom[here]! < next) next = bottom[here]!;
        }
        this.nextLevel = this.started < starts.length ? Math.min(next, top[starts[this.started]!]!) : next;
        return changed;
    }

    /** The edge that runs below a height on the way down that an edge belongs to. */
    private followed(from: number, height: number): number {
        let edge = from;
        while (edge !== none && this.bottom[edge]! <= height) edge = this.after[edge]!;
        return edge;
    }

    /** Follows the edges through a slab. Answers whether faces may begin, end, meet or part at its ends or in it. */
    moveTo(above: number, below: number, begun: boolean): boolean {
        const { active, cut, was, top, x, slope, room } = this;
        if (begun) {
            for (const edge of active) cut[edge] = this.xAt(edge, above);
            putInOrder(active, cut);
        }
        this.crossings = [];
        let changed = false;
        let ordered = true;
        let before = Number.NEGATIVE_INFINITY;
        for (let i = 0; i < active.length; i++) {
            const edge = active[i]!;
            const here = x[edge]! + (below - top[edge]!) * slope[edge]!;
            was[edge] = cut[edge]!;
            cut[edge] = here;
            if (here < before - noise) ordered = false;
            const hasRoom = here - before > wide;
            if (hasRoom !== room[i]) {
                room[i] = hasRoom;
                changed = true;
            }
            before = here;
        }
        if (!ordered) this.cross(above, below);
        this.changedBelow = changed || !ordered;
        return this.changedBelow || begun;
    }

    /** Exchanges the edges that cross within a slab. */
    private cross(above: number, below: number): void {
        const { active, cut, was, room } = this;
        putInOrder(active, cut, (a, b) => {
            if (was[b]! - was[a]! <= wide || cut[a]! - cut[b]! <= wide) return;
            const y = this.crossing(a, b);
            if (y > above && y < below) this.crossings.push(y);
        });
        for (let i = 1; i < active.length; i++) room[i] = cut[active[i]!]! - cut[active[i - 1]!]! > wide;
    }

    /** Enters the edges of a ring from a number on, and which go on from which; answers the next free number. */
    private enter(ring: Float64Array, whose: number, from: number, goesOn: Int8Array): number {
        let count = from;
        let before = none;
        let first = none;
        let ax = ring[ring.length - 2]!;
        let ay = ring[ring.length - 1]!;
        for (let i = 0; i < ring.length; i += 2) {
            const bx = ring[i]!;
            const by = ring[i + 1]!;
            const edge = ay === by ? none : count++;
            if (edge !== none) {
                this.top[edge] = Math.min(ay, by);
                this.bottom[edge] = Math.max(ay, by);
                this.x[edge] = ay < by ? ax : bx;
                this.slope[edge] = (bx - ax) / (by - ay);
                this.after[edge] = none;
                goesOn[edge] = 0;
                this.whose[edge] = whose;
                this.sense[edge] = ay < by ? -1 : 1;
            }
            if (i === 0) first = edge;
            else this.join(before, edge, goesOn);
            before = edge;
            ax = bx;
            ay = by;
        }
        this.join(before, first, goesOn);
        return count;
    }

    /** Of two edges of a ring, one behind the other, the lower goes on from the upper, unless their corner is a summit or a pit. */
    private join(edge: number, next: number, goesOn: Int8Array): void {
        if (edge === none || next === none || this.sense[edge] !== this.sense[next]) return;
        const [upper, lower] = this.sense[edge] === -1 ? [edge, next] : [next, edge];
        this.after[upper] = lower;
        goesOn[lower] = 1;
    }

    xAt(edge: number, y: number): number {
        return this.x[edge]! + (y - this.top[edge]!) * this.slope[edge]!;
    }

    /** The height at which the lines of two edges meet; not finite for parallel ones. */
    private crossing(a: number, b: number): number {
        const y = this.top[a]!;
        return y + (this.xAt(b, y) - this.x[a]!) / (this.slope[a]! - this.slope[b]!);
    }

    /** 1 for an upright edge, near 0 for one that is almost level. */
    steepness(edge: number): number {
        return 1 / Math.hypot(1, this.slope[edge]!);
    }

    /** How many edges so many levels meet together, if they lie evenly. */
    meet(levels: number): number {
        const { count, top, bottom } = this;
        let sum = 0;
        let last = Number.NEGATIVE_INFINITY;
        for (let edge = 0; edge < count; edge++) {
            sum += bottom[edge]! - top[edge]!;
            last = Math.max(last, bottom[edge]!);
        }
        return (sum * (levels - 1)) / Math.max(1, last - this.first());
    }
}
