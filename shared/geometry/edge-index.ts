import Flatbush from 'flatbush';
import type { Ring } from './region';
import { squareToSegment } from './segment';

/** Edges that share one box of the index: fewer boxes to build, more edges to look at. */
const runLength = 16;

/**
 * Finds the edges of many rings near a place, in time that hardly grows with their number.
 * Coordinates may be millimetres or whole units.
 */
export class EdgeIndex {
    /** All rings' points one after the other, each ring's first one repeated at its end: edge e goes from point e to e + 1. */
    readonly points: Float64Array;
    /** Each ring's first edge; its last one is two before the next ring's first. */
    readonly firstEdge: Int32Array;
    /** Runs of neighbouring edges: first edge, end, ring, and box (minX, minY, maxX, maxY). */
    readonly runs: number;
    readonly runStart: Int32Array;
    readonly runEnd: Int32Array;
    readonly runRing: Int32Array;
    readonly runBox: Float64Array;
    private readonly tree: Flatbush | undefined;

    constructor(rings: readonly Ring[]) {
        let size = 0;
        let runs = 0;
        for (const ring of rings) {
            size += ring.length + 2;
            runs += Math.ceil(ring.length / 2 / runLength);
        }
        this.runs = runs;
        this.points = new Float64Array(size);
        this.firstEdge = new Int32Array(rings.length + 1);
        this.runStart = new Int32Array(runs);
        this.runEnd = new Int32Array(runs);
        this.runRing = new Int32Array(runs);
        this.runBox = new Float64Array(4 * runs);
        let first = 0;
        let run = 0;
        for (let number = 0; number < rings.length; number++) {
            const ring = rings[number]!;
            this.firstEdge[number] = first;
            this.points.set(ring, 2 * first);
            this.points.set(ring.subarray(0, 2), 2 * first + ring.length);
            const end = first + ring.length / 2;
            for (let edge = first; edge < end; edge += runLength, run++) {
                this.runStart[run] = edge;
                this.runEnd[run] = Math.min(edge + runLength, end);
                this.runRing[run] = number;
                this.boxRun(run);
            }
            first = end + 1;
        }
        this.firstEdge[rings.length] = first;
        this.tree = this.plant();
    }

    /** Tells the number of every run whose box touches the given one. */
    runsNear(minX: number, minY: number, maxX: number, maxY: number, visit: (run: number) => void): void {
        this.tree?.search(minX, minY, maxX, maxY, (run) => {
            visit(run);
            return false;
        });
    }

    /** Tells of every edge whose own box touches the given one: its number and its ring's. */
    edgesNear(minX: number, minY: number, maxX: number, maxY: number, visit: (edge: number, ring: number) => void): void {
        const { points, runStart, runEnd, runRing } = this;
        this.runsNear(minX, minY, maxX, maxY, (run) => {
            const end = runEnd[run]!;
            for (let edge = runStart[run]!; edge < end; edge++) {
                const ax = points[2 * edge]!;
                const ay = points[2 * edge + 1]!;
                const bx = points[2 * edge + 2]!;
                const by = points[2 * edge + 3]!;
                if ((ax < minX && bx < minX) || (ax > maxX && bx > maxX)) continue;
                if ((ay < minY && by < minY) || (ay > maxY && by > maxY)) continue;
                visit(edge, runRing[run]!);
            }
        });
    }

    /**
     * Tells of every edge that a ray from (x, y) to the left crosses: its ring, and 1 if the ring
     * winds around the point in the positive sense there, else -1. The sum for a ring is its winding number.
     */
    crossings(x: number, y: number, visit: (ring: number, sense: number) => void): void {
        const { points } = this;
        this.edgesNear(Number.NEGATIVE_INFINITY, y, x, y, (edge, ring) => {
            const ay = points[2 * edge + 1]!;
            const by = points[2 * edge + 3]!;
            if (ay > y === by > y) return;
            const ax = points[2 * edge]!;
            const bx = points[2 * edge + 2]!;
            // On which side of the edge the point lies; the edge runs upwards if by < ay.
            const side = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
            if (by < ay ? side > 0 : side < 0) visit(ring, by < ay ? 1 : -1);
        });
    }

    /** Distance from a point to the nearest edge, if that is below `within`; otherwise infinite. */
    distance(x: number, y: number, within = Number.POSITIVE_INFINITY): number {
        // The nearest box bounds how far there is to look, however far that may be.
        let reach = within;
        if (!Number.isFinite(within)) {
            for (const run of this.tree?.neighbors(x, y, 1) ?? []) {
                reach = Number.POSITIVE_INFINITY;
                for (let edge = this.runStart[run]!; edge < this.runEnd[run]!; edge++)
                    reach = Math.min(reach, this.distanceTo(edge, x, y));
            }
        }
        let least = Number.POSITIVE_INFINITY;
        this.edgesNear(x - reach, y - reach, x + reach, y + reach, (edge) => {
            least = Math.min(least, this.distanceTo(edge, x, y));
        });
        return least < within ? least : Number.POSITIVE_INFINITY;
    }

    private distanceTo(edge: number, x: number, y: number): number {
        const { points } = this;
        const i = 2 * edge;
        return Math.sqrt(squareToSegment(x, y, points[i]!, points[i + 1]!, points[i + 2]!, points[i + 3]!));
    }

    private boxRun(run: number): void {
        const { points } = this;
        let minX = Number.POSITIVE_INFINITY;
        let minY = Number.POSITIVE_INFINITY;
        let maxX = Number.NEGATIVE_INFINITY;
        let maxY = Number.NEGATIVE_INFINITY;
        for (let i = 2 * this.runStart[run]!; i <= 2 * this.runEnd[run]!; i += 2) {
            const x = points[i]!;
            const y = points[i + 1]!;
            if (x < minX) minX = x;
            if (x > maxX) maxX = x;
            if (y < minY) minY = y;
            if (y > maxY) maxY = y;
        }
        this.runBox.set([minX, minY, maxX, maxY], 4 * run);
    }

    private plant(): Flatbush | undefined {
        if (this.runs === 0) return undefined;
        const tree = new Flatbush(this.runs);
        for (let i = 0; i < this.runBox.length; i += 4) {
            tree.add(this.runBox[i]!, this.runBox[i + 1]!, this.runBox[i + 2]!, this.runBox[i + 3]!);
        }
        tree.finish();
        return tree;
    }
}
