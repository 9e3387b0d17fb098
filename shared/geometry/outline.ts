import { chordAngle } from './shapes';

export type Join = 'round' | 'miter' | 'bevel';

/**
 * Walks along a path at a distance and collects the raw outline: the points may cross each other,
 * but every place is wound around as often as it is covered. Where the outline turns inwards it
 * goes by the path's own point, so that the outline is exactly the sum of one rectangle for each
 * edge and one wedge for each outward corner; all wind the same way, and what is wound around at
 * least once is the widened path, whatever its curvature.
 *
 * `distance` is in mm, to the left of the walk in the sense of (dy, -dx): outwards for an outer ring.
 */
export class Outline {
    private points = new Float64Array(256);
    private count = 0;
    private readonly step: number;
    private readonly miterDot: number;

    constructor(
        private readonly distance: number,
        private readonly join: Join,
        miterLimit: number,
        tolerance: number,
    ) {
        this.step = chordAngle(Math.abs(distance), tolerance);
        // Length over width of a mitre is 1/cos(turn/2); compared by the cosine of the turn.
        this.miterDot = miterLimit >= 1 ? 2 / (miterLimit * miterLimit) - 1 : 1;
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

    /** At a corner of the path, from an edge with unit direction (ux, uy) to one with (vx, vy). */
    corner(x: number, y: number, ux: number, uy: number, vx: number, vy: number): void {
        const r = this.distance;
        const cross = ux * vy - uy * vx;
        const dot = ux * vx + uy * vy;
        const fromX = x + uy * r;
        const fromY = y - ux * r;
        const toX = x + vy * r;
        const toY = y - vx * r;
        // The outside of a turn is on the left if it turns right. A reversal has an outside on both.
        const outward = cross * r > 0 || (cross === 0 && dot < 0);
        if (!outward) {
            this.add(fromX, fromY);
            if (cross !== 0) {
                this.add(x, y);
                this.add(toX, toY);
            }
            return;
        }
        this.add(fromX, fromY);
        if (this.join === 'round') {
            this.arc(x, y, uy * r, -ux * r, Math.atan2(Math.abs(cross), dot) * Math.sign(r));
        } else if (this.join === 'miter' && dot >= this.miterDot && dot > -0.999_999) {
            const q = r / (1 + dot);
            this.add(x + (uy + vy) * q, y - (ux + vx) * q);
        }
        this.add(toX, toY);
    }

    /** The inner points of an arc about (x, y), from the arm (armX, armY) through an angle in rad. */
    arc(x: number, y: number, armX: number, armY: number, angle: number): void {
        const steps = Math.ceil(Math.abs(angle) / this.step);
        for (let i = 1; i < steps; i++) {
            const part = (angle * i) / steps;
            const cos = Math.cos(part);
            const sin = Math.sin(part);
            this.add(x + armX * cos - armY * sin, y + armX * sin + armY * cos);
        }
    }
}

/** Walks once around a closed path. */
export function walk(outline: Outline, points: Float64Array): void {
    const size = points.length;
    let ux = points[0]! - points[size - 2]!;
    let uy = points[1]! - points[size - 1]!;
    let length = Math.hypot(ux, uy);
    ux /= length;
    uy /= length;
    for (let i = 0; i < size; i += 2) {
        const next = i + 2 < size ? i + 2 : 0;
        let vx = points[next]! - points[i]!;
        let vy = points[next + 1]! - points[i + 1]!;
        length = Math.hypot(vx, vy);
        vx /= length;
        vy /= length;
        outline.corner(points[i]!, points[i + 1]!, ux, uy, vx, vy);
        ux = vx;
        uy = vy;
    }
}

/** Whether each of the edges of a path has a direction: repeated points are dropped, a closed path's last too. */
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
