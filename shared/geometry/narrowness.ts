import type { EdgeIndex } from './edge-index';
import { MedialSamples } from './medial-samples';
import type { MedialSample, NarrowPlace } from './narrow-place';
import { ShrinkingBall } from './shrinking-ball';

/** Steps along all outlines together, about. */
const mostSteps = 300_000;

/** The most that the direction turns from one disc at a corner to the next, in rad. */
const cornerStep = Math.PI / 12;

/** Steps along an edge that are skipped together when nothing lies opposite. */
const stepsTogether = 16;

/** Walks along outlines with a tangent disc and notes where it is smaller than the limit. */
export class Narrowness {
    private readonly disc: ShrinkingBall;
    private readonly step: number;
    private readonly samples = new MedialSamples();

    /** `length` is that of all outlines in mm; `side` is 1 to look into the region and -1 to look out of it. */
    constructor(
        private readonly index: EdgeIndex,
        private readonly limit: number,
        length: number,
        private readonly side: 1 | -1,
    ) {
        this.disc = new ShrinkingBall(index);
        this.step = Math.max(limit / 4, length / mostSteps);
    }

    walk(ring: number, area: number): void {
        const first = this.index.firstEdge[ring]!;
        const end = this.index.firstEdge[ring + 1]! - 1;
        this.samples.begin();
        for (let edge = first; edge < end; edge++) {
            this.aroundCorner(edge > first ? edge - 1 : end - 1, edge);
            this.alongEdge(edge);
        }
        this.samples.end(area);
    }

    places(): NarrowPlace[] {
        return this.samples.places(2 * this.step);
    }

    /** At a corner that sticks into the region the disc can touch in a whole fan of directions. */
    private aroundCorner(before: number, after: number): void {
        const { points } = this.index;
        const ux = points[2 * before + 2]! - points[2 * before]!;
        const uy = points[2 * before + 3]! - points[2 * before + 1]!;
        const vx = points[2 * after + 2]! - points[2 * after]!;
        const vy = points[2 * after + 3]! - points[2 * after + 1]!;
        const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
        if (turn * this.side > -cornerStep) return;
        const x = points[2 * after]!;
        const y = points[2 * after + 1]!;
        const start = Math.atan2(ux, -uy);
        const steps = Math.ceil(Math.abs(turn) / cornerStep);
        let narrow = false;
        for (let k = 0; k <= steps; k++) {
            const angle = start + (turn * k) / steps;
            const sample = this.sampleAt(x, y, this.side * Math.cos(angle), this.side * Math.sin(angle), 0, after, after, before);
            if (sample === undefined) continue;
            this.samples.add(sample);
            narrow = true;
        }
        if (!narrow) this.samples.pause();
    }

    private alongEdge(edge: number): void {
        const { points } = this.index;
        const ax = points[2 * edge]!;
        const ay = points[2 * edge + 1]!;
        const dx = points[2 * edge + 2]! - ax;
        const dy = points[2 * edge + 3]! - ay;
        const length = Math.hypot(dx, dy);
        const normalX = (-this.side * dy) / length;
        const normalY = (this.side * dx) / length;
        const steps = Math.ceil(length / this.step);
        for (let k = 0; k < steps; k++) {
            if (k % stepsTogether === 0 && steps > stepsTogether) {
                const from = k / steps;
                const to = Math.min(1, (k + stepsTogether) / steps);
                if (this.faceNothing(edge, ax + dx * from, ay + dy * from, ax + dx * to, ay + dy * to, normalX, normalY)) {
                    this.samples.pause();
                    k += stepsTogether - 1;
                    continue;
                }
            }
            const t = (k + 0.5) / steps;
            const sample = this.sampleAt(ax + dx * t, ay + dy * t, normalX, normalY, length / steps, edge + t, edge, edge);
            if (sample === undefined) this.samples.pause();
            else this.samples.add(sample);
        }
    }

    /** Whether no other edge comes within the limit of a part of an edge, as far as boxes can tell. */
    private faceNothing(own: number, ax: number, ay: number, bx: number, by: number, normalX: number, normalY: number): boolean {
        const wideX = normalX * this.limit;
        const wideY = normalY * this.limit;
        let nothing = true;
        this.index.edgesNear(
            Math.min(ax, bx, ax + wideX, bx + wideX),
            Math.min(ay, by, ay + wideY, by + wideY),
            Math.max(ax, bx, ax + wideX, bx + wideX),
            Math.max(ay, by, ay + wideY, by + wideY),
            (edge) => {
                if (edge !== own) nothing = false;
            },
        );
        return nothing;
    }

    private sampleAt(
        x: number,
        y: number,
        normalX: number,
        normalY: number,
        length: number,
        at: number,
        edge: number,
        before: number,
    ): MedialSample | undefined {
        const { disc } = this;
        disc.place(x, y, normalX, normalY, this.limit / 2, edge, before);
        if (disc.stopAt < 0) return undefined;
        const { radius, x: middleX, y: middleY, stopX, stopY, stopAt } = disc;
        return { x, y, at, length, radius, middleX, middleY, stopX, stopY, stopAt };
    }
}
