import { chordAngle } from './shapes';

export type Join = 'round' | 'miter' | 'bevel';

/**
 * Walks along a path at a distance and collects the raw outline. Its points may cross each other,
 * but every place is wound around as often as it is covered: the outline is the sum of one strip
 * for each edge and one wedge for each outward corner, all wound the same way. So what is wound
 * around at least once is the widened path, whatever its curvature.
 *
 * At an inward corner the strips of both edges overlap. The outline goes by the path's own point,
 * to count each in full, or, where both edges are long enough, straight to where the strips'
 * sides cross: each strip then ends at the bisector, and what it loses the other one covers.
 *
 * `distance` is in mm, to the left of the walk in the sense of (dy, -dx): outwards for an outer ring.
 */
export class Outline {
    private points = new Float64Array(256);
    private count = 0;
    /** How many points arcs may still take; after that they are drawn coarsely, so that the memory stays bounded. */
    private arcPoints = 2_000_000;
    private readonly step: number;
    private readonly miterDot: number;
    private readonly smoothDot: number;

    constructor(
        readonly distance: number,
        private readonly join: Join,
        miterLimit: number,
        tolerance: number,
    ) {
        const radius = Math.abs(distance);
        this.step = chordAngle(radius, tolerance);
        // Length over width of a mitre is 1/cos(turn/2); compared by the cosine of the turn.
        this.miterDot = miterLimit >= 1 ? dotOfMiter(miterLimit) : 1;
        // Where a mitre leaves the arc by less than the tolerance, it is as good and shorter.
        this.smoothDot = dotOfMiter(1 + tolerance / radius);
    }

    /** The collected outline; the walk can begin again. */
    take(): Float64Array {
        const taken = this.points.slice(0, this.count);
        this.count = 0;
        return taken;
    }

    add(x: number, y: number): void {
        if (this.count + 2 > this.points.length) {
            const larger = new Float64Array(this.points.length * 2);
            larger.set(this.points);
            this.points = larger;
        }
        this.points[this.count++] = x;
        this.points[this.count++] = y;
    }

    /** Adds one side of a path without repeated points: all the way round, or from the first point's left to the last one's. */
    side(points: Float64Array, closed: boolean): void {
        const edges = edgesOf(points, closed);
        const corners = points.length / 2;
        if (!closed) this.beside(points[0]!, points[1]!, edges.ux[0]!, edges.uy[0]!);
        for (let k = closed ? 0 : 1; k < (closed ? corners : corners - 1); k++) {
            const before = k > 0 ? k - 1 : corners - 1;
            const short = !this.hasRoom(edges, before, closed) || !this.hasRoom(edges, k, closed);
            this.corner(points[2 * k]!, points[2 * k + 1]!, edges, before, k, short);
        }
        if (!closed)
            this.beside(points[2 * corners - 2]!, points[2 * corners - 1]!, edges.ux[corners - 2]!, edges.uy[corners - 2]!);
    }

    /** The inner points of an arc about (x, y), from the arm (armX, armY) through an angle in rad. */
    arc(x: number, y: number, armX: number, armY: number, angle: number): void {
        const wanted = Math.ceil(Math.abs(angle) / this.step);
        const steps = this.arcPoints > 0 ? wanted : Math.min(wanted, 4);
        this.arcPoints -= steps;
        for (let i = 1; i < steps; i++) {
            const part = (angle * i) / steps;
            const cos = Math.cos(part);
            const sin = Math.sin(part);
            this.add(x + armX * cos - armY * sin, y + armX * sin + armY * cos);
        }
    }

    private beside(x: number, y: number, ux: number, uy: number): void {
        this.add(x + uy * this.distance, y - ux * this.distance);
    }

    /** Between two edges; `short` if either has no room for a strip that ends at the bisector. */
    private corner(x: number, y: number, { ux, uy }: Edges, before: number, after: number, short: boolean): void {
        const r = this.distance;
        const fromX = ux[before]!;
        const fromY = uy[before]!;
        const toX = ux[after]!;
        const toY = uy[after]!;
        const cross = fromX * toY - fromY * toX;
        const dot = fromX * toX + fromY * toY;
        // The outside of a turn is on the left if it turns right. A reversal has an outside on both.
        const outward = cross * r > 0 || (cross === 0 && dot < 0);
        const sharp = outward
            ? dot < (this.join === 'round' ? this.smoothDot : this.join === 'miter' ? this.miterDot : 1)
            : short || dot <= 0;
        if (!sharp) {
            const q = r / (1 + dot);
            this.add(x + (fromY + toY) * q, y - (fromX + toX) * q);
            return;
        }
        this.beside(x, y, fromX, fromY);
        if (!outward) this.add(x, y);
        else if (this.join === 'round') this.arc(x, y, fromY * r, -fromX * r, Math.atan2(Math.abs(cross), dot) * Math.sign(r));
        this.beside(x, y, toX, toY);
    }

    /** Whether an edge is long enough for its strip to end at the bisectors of both its corners and still cover what its neighbours' strips lose. */
    private hasRoom({ ux, uy, length }: Edges, edge: number, closed: boolean): boolean {
        const count = length.length;
        const sense = Math.sign(this.distance);
        let needed = 0;
        for (const step of [-1, 1]) {
            const other = closed ? (edge + step + count) % count : edge + step;
            if (other < 0 || other >= count) continue;
            const cross = (ux[edge]! * uy[other]! - uy[edge]! * ux[other]!) * step * sense;
            if (cross < 0) needed -= cross;
        }
        return needed * Math.abs(this.distance) <= length[edge]!;
    }
}

/** Cosine of the turn at which a mitre is as many times longer than wide. */
function dotOfMiter(ratio: number): number {
    return 2 / (ratio * ratio) - 1;
}

/** Unit directions and lengths of a path's edges. */
interface Edges {
    readonly ux: Float64Array;
    readonly uy: Float64Array;
    readonly length: Float64Array;
}

function edgesOf(points: Float64Array, closed: boolean): Edges {
    const corners = points.length / 2;
    const count = closed ? corners : corners - 1;
    const ux = new Float64Array(count);
    const uy = new Float64Array(count);
    const length = new Float64Array(count);
    for (let k = 0; k < count; k++) {
        const next = k + 1 < corners ? k + 1 : 0;
        const dx = points[2 * next]! - points[2 * k]!;
        const dy = points[2 * next + 1]! - points[2 * k + 1]!;
        const size = Math.hypot(dx, dy);
        ux[k] = dx / size;
        uy[k] = dy / size;
        length[k] = size;
    }
    return { ux, uy, length };
}

/** Drops repeated points, a closed path's last one too, and points that are not finite: every edge left has a direction. */
export function withoutRepeats(points: Float64Array, closed: boolean): Float64Array {
    const out = new Float64Array(points.length);
    let count = 0;
    for (let i = 0; i + 1 < points.length; i += 2) {
        const x = points[i]!;
        const y = points[i + 1]!;
        if (!Number.isFinite(x) || !Number.isFinite(y)) continue;
        if (count > 0 && near(out[count - 2]!, out[count - 1]!, x, y)) continue;
        out[count++] = x;
        out[count++] = y;
    }
    while (closed && count > 2 && near(out[0]!, out[1]!, out[count - 2]!, out[count - 1]!)) count -= 2;
    return out.subarray(0, count);
}

/** Closer than the rounding of the coordinates leaves a meaningful direction, for points around a metre from the origin. */
function near(ax: number, ay: number, bx: number, by: number): boolean {
    return Math.abs(ax - bx) < 1e-9 && Math.abs(ay - by) < 1e-9;
}
