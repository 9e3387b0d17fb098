import type { EdgeIndex } from './edge-index';

/** A disc shrinks this often at most; it has usually settled after four. */
const mostSteps = 24;

/**
 * Finds the largest disc that touches the outline at a point from one side and holds no other
 * part of it: its diameter is how wide the region is there. The disc starts too large, is pushed
 * back to the nearest edge within it, and so on until nothing is inside (the shrinking-ball algorithm of
 * Ma, Bae and Choi, "3D medial axis point approximation using nearest neighbors and the normal field",
 * The Visual Computer 28, 2012, with edges instead of points; title from memory).
 */
export class ShrinkingBall {
    /** Radius, middle, and the point that stopped it: its edge's number plus how far along it, -1 if nothing did. */
    radius = 0;
    x = 0;
    y = 0;
    stopX = 0;
    stopY = 0;
    stopAt = -1;
    private near: number[] = [];

    constructor(private readonly index: EdgeIndex) {}

    /** Puts the disc at (x, y) with its middle along the unit normal; the edges that the point lies on do not count. */
    place(x: number, y: number, normalX: number, normalY: number, largest: number, own: number, alsoOwn: number): void {
        this.radius = largest;
        this.x = x + normalX * largest;
        this.y = y + normalY * largest;
        this.stopAt = -1;
        this.near = [];
        this.index.edgesNear(this.x - largest, this.y - largest, this.x + largest, this.y + largest, (edge) => {
            if (edge !== own && edge !== alsoOwn) this.near.push(edge);
        });
        for (let step = 0; step < mostSteps && this.pushBack(x, y, normalX, normalY); step++);
    }

    private pushBack(x: number, y: number, normalX: number, normalY: number): boolean {
        const { points } = this.index;
        let least = (this.radius * 0.9999) ** 2;
        let at = -1;
        let stopX = 0;
        let stopY = 0;
        for (const candidate of this.near) {
            const i = 2 * candidate;
            const ax = points[i]!;
            const ay = points[i + 1]!;
            const dx = points[i + 2]! - ax;
            const dy = points[i + 3]! - ay;
            const along = ((this.x - ax) * dx + (this.y - ay) * dy) / (dx * dx + dy * dy);
            const t = Math.max(0, Math.min(1, along));
            const qx = ax + t * dx;
            const qy = ay + t * dy;
            const square = (qx - this.x) ** 2 + (qy - this.y) ** 2;
            if (square >= least) continue;
            least = square;
            at = candidate + t;
            stopX = qx;
            stopY = qy;
        }
        if (at < 0) return false;
        // The circle that touches at (x, y) along the normal and passes the stop.
        const toX = stopX - x;
        const toY = stopY - y;
        this.radius = (toX * toX + toY * toY) / (2 * (toX * normalX + toY * normalY));
        this.x = x + normalX * this.radius;
        this.y = y + normalY * this.radius;
        this.stopX = stopX;
        this.stopY = stopY;
        this.stopAt = at;
        return true;
    }
}
