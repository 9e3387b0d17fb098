import { centreOf } from './arc';
import type { PathSink } from './sink';

/** A place for a marker: where, and the direction of the path there in rad. */
export interface Vertex {
    readonly x: number;
    readonly y: number;
    readonly angle: number;
}

interface Growing {
    x: number;
    y: number;
    /** Directions of the segments that come in and go out, in rad. */
    into: number | undefined;
    out: number | undefined;
}

/** Collects a path's vertices with their directions (SVG 2, sections 9.5.3 and 11.6.2). */
export class Vertices implements PathSink {
    private readonly all: Growing[] = [];
    private start: Growing | undefined;
    private x = 0;
    private y = 0;

    moveTo(x: number, y: number): void {
        this.start = this.arrive(x, y, undefined);
    }

    lineTo(x: number, y: number): void {
        this.segment(x, y, [
            [this.x, this.y],
            [x, y],
        ]);
    }

    quadTo(x1: number, y1: number, x: number, y: number): void {
        this.segment(x, y, [
            [this.x, this.y],
            [x1, y1],
            [x, y],
        ]);
    }

    cubicTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
        this.segment(x, y, [
            [this.x, this.y],
            [x1, y1],
            [x2, y2],
            [x, y],
        ]);
    }

    arcTo(rx: number, ry: number, turn: number, large: boolean, sweep: boolean, x: number, y: number): void {
        const arc = centreOf(this.x, this.y, rx, ry, (turn * Math.PI) / 180, large, sweep, x, y);
        if (arc === undefined) {
            this.lineTo(x, y);
            return;
        }
        const along = (t: number) => {
            const dx = -arc.rx * Math.sin(t) * Math.sign(arc.sweep);
            const dy = arc.ry * Math.cos(t) * Math.sign(arc.sweep);
            return Math.atan2(
                Math.sin(arc.turn) * dx + Math.cos(arc.turn) * dy,
                Math.cos(arc.turn) * dx - Math.sin(arc.turn) * dy,
            );
        };
        this.leave(along(arc.start));
        this.arrive(x, y, along(arc.start + arc.sweep));
    }

    close(): void {
        const { start } = this;
        if (start === undefined) return;
        this.lineTo(start.x, start.y);
        const end = this.all.at(-1)!;
        // The two ends of a closed subpath share one direction.
        end.out = start.out;
        start.into = end.into;
    }

    /** In order; one whose segments have no length takes the direction before it. */
    list(): Vertex[] {
        let last = 0;
        return this.all.map(({ x, y, into, out }) => {
            last = into !== undefined && out !== undefined ? between(into, out) : (into ?? out ?? last);
            return { x, y, angle: last };
        });
    }

    private segment(x: number, y: number, points: readonly (readonly [number, number])[]): void {
        this.leave(direction(points));
        this.arrive(x, y, direction(points.toReversed().map(([px, py]) => [-px, -py] as const)));
    }

    private leave(angle: number | undefined): void {
        const last = this.all.at(-1);
        if (last !== undefined) last.out = angle;
    }

    private arrive(x: number, y: number, into: number | undefined): Growing {
        const vertex = { x, y, into, out: undefined };
        this.all.push(vertex);
        this.x = x;
        this.y = y;
        return vertex;
    }
}

/** From the first point to the next that differs from it. */
function direction(points: readonly (readonly [number, number])[]): number | undefined {
    const [x, y] = points[0]!;
    const next = points.find(([px, py]) => px !== x || py !== y);
    return next === undefined ? undefined : Math.atan2(next[1] - y, next[0] - x);
}

/** The middle of two directions, the shorter way round. */
function between(a: number, b: number): number {
    return a + Math.atan2(Math.sin(b - a), Math.cos(b - a)) / 2;
}
