import { chordAngle } from '../../geometry/shapes';
import type { Path } from '../../geometry/widen';
import { centreOf } from './arc';
import type { PathSink } from './sink';

/** Halvings of one curve at most: 65 536 chords. */
const deepest = 16;

/** How many corners may still be made; shared by all shapes of a file. */
export interface Allowance {
    corners: number;
    /** Whether it has been said that they are used up. */
    told: boolean;
}

/**
 * Turns curves into chords that stray at most `tolerance` from them, in user units. For a stroke
 * the chords must also not turn by more than `bend` rad from one to the next, since widening
 * magnifies what the middle line lacks.
 */
export class Flattener implements PathSink {
    readonly paths: Path[] = [];
    /** Whether a coordinate was not finite; the shape up to there is kept. */
    broken = false;
    private points = new Float64Array(64);
    private count = 0;
    private drawn = false;
    private x = 0;
    private y = 0;

    constructor(
        private readonly tolerance: number,
        private readonly bend: number,
        private readonly allowance: Allowance,
    ) {}

    moveTo(x: number, y: number): void {
        this.finish(false);
        this.add(x, y);
    }

    lineTo(x: number, y: number): void {
        this.drawn = true;
        this.add(x, y);
    }

    quadTo(x1: number, y1: number, x: number, y: number): void {
        const { x: x0, y: y0 } = this;
        // Raising the degree is exact.
        this.cubicTo(x0 + (2 / 3) * (x1 - x0), y0 + (2 / 3) * (y1 - y0), x + (2 / 3) * (x1 - x), y + (2 / 3) * (y1 - y), x, y);
    }

    cubicTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
        this.drawn = true;
        if (Number.isFinite(x1 + y1 + x2 + y2 + x + y)) this.split(this.x, this.y, x1, y1, x2, y2, x, y, deepest);
        else this.broken = true;
    }

    arcTo(rx: number, ry: number, turn: number, large: boolean, sweep: boolean, x: number, y: number): void {
        this.drawn = true;
        const arc = centreOf(this.x, this.y, rx, ry, (turn * Math.PI) / 180, large, sweep, x, y);
        if (arc !== undefined && Number.isFinite(arc.cx + arc.cy + arc.sweep)) {
            const larger = Math.max(arc.rx, arc.ry);
            const smaller = Math.min(arc.rx, arc.ry);
            // At the tips of an ellipse the direction turns faster than the parameter.
            const step = Math.min(chordAngle(larger, this.tolerance), this.bend / Math.min(larger / smaller, 32));
            const steps = Math.min(Math.ceil(Math.abs(arc.sweep) / step), 2 ** deepest);
            const cos = Math.cos(arc.turn);
            const sin = Math.sin(arc.turn);
            for (let i = 1; i < steps; i++) {
                const t = arc.start + (arc.sweep * i) / steps;
                const px = arc.rx * Math.cos(t);
                const py = arc.ry * Math.sin(t);
                this.add(arc.cx + cos * px - sin * py, arc.cy + sin * px + cos * py);
            }
        }
        this.add(x, y);
    }

    close(): void {
        this.drawn = true;
        this.finish(true);
    }

    /** Ends the last subpath; without it an open one is not in `paths`. */
    end(): readonly Path[] {
        this.finish(false);
        return this.paths;
    }

    private finish(closed: boolean): void {
        // A moveto that draws nothing leaves no dot either.
        if (this.drawn && this.count > 0) this.paths.push({ points: this.points.slice(0, this.count), closed });
        this.count = 0;
        this.drawn = false;
    }

    private add(x: number, y: number): void {
        if (!Number.isFinite(x) || !Number.isFinite(y)) {
            this.broken = true;
            return;
        }
        this.x = x;
        this.y = y;
        if (this.allowance.corners <= 0) return;
        this.allowance.corners--;
        if (this.count + 2 > this.points.length) {
            const larger = new Float64Array(this.points.length * 2);
            larger.set(this.points);
            this.points = larger;
        }
        this.points[this.count++] = x;
        this.points[this.count++] = y;
    }

    private split(
        x0: number,
        y0: number,
        x1: number,
        y1: number,
        x2: number,
        y2: number,
        x3: number,
        y3: number,
        depth: number,
    ): void {
        if (depth === 0 || this.isFlat(x0, y0, x1, y1, x2, y2, x3, y3)) {
            this.add(x3, y3);
            return;
        }
        const ax = (x0 + x1) / 2;
        const ay = (y0 + y1) / 2;
        const bx = (x1 + x2) / 2;
        const by = (y1 + y2) / 2;
        const cx = (x2 + x3) / 2;
        const cy = (y2 + y3) / 2;
        const abx = (ax + bx) / 2;
        const aby = (ay + by) / 2;
        const bcx = (bx + cx) / 2;
        const bcy = (by + cy) / 2;
        const mx = (abx + bcx) / 2;
        const my = (aby + bcy) / 2;
        this.split(x0, y0, ax, ay, abx, aby, mx, my, depth - 1);
        this.split(mx, my, bcx, bcy, cx, cy, x3, y3, depth - 1);
    }

    private isFlat(x0: number, y0: number, x1: number, y1: number, x2: number, y2: number, x3: number, y3: number): boolean {
        // A cubic strays from its chord by at most a quarter of this (its distance from the chord run at even speed).
        const ux = Math.abs(3 * x1 - 2 * x0 - x3);
        const uy = Math.abs(3 * y1 - 2 * y0 - y3);
        const vx = Math.abs(3 * x2 - 2 * x3 - x0);
        const vy = Math.abs(3 * y2 - 2 * y3 - y0);
        if (Math.hypot(Math.max(ux, vx), Math.max(uy, vy)) > 4 * this.tolerance) return false;
        if (this.bend >= Math.PI) return true;
        const length = Math.abs(x1 - x0) + Math.abs(y1 - y0) + Math.abs(x2 - x1) + Math.abs(y2 - y1);
        // A cusp stays bent however often it is halved; too small a piece has no visible direction.
        if (length < this.tolerance / 100) return true;
        return turning(x1 - x0, y1 - y0, x2 - x1, y2 - y1) + turning(x2 - x1, y2 - y1, x3 - x2, y3 - y2) <= this.bend;
    }
}

/** The angle between two vectors in rad, 0 if one of them is nothing. */
function turning(ax: number, ay: number, bx: number, by: number): number {
    return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
}
