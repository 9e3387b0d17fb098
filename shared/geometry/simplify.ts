import { unite } from './boolean';
import type { Region, Ring } from './region';

/**
 * A region with fewer points, whose edges stray from the true ones by at most `tolerance` mm; so
 * its area changes by at most the tolerance times the perimeter. Parts thinner than the tolerance
 * may vanish or meet. Never has more points than before.
 */
export function simplify(region: Region, tolerance: number): Region {
    if (!(tolerance > 0) || !Number.isFinite(tolerance)) return region;
    const rings: Ring[] = [];
    let dropped = false;
    for (const ring of region.rings) {
        const kept = simplifyRing(ring, tolerance);
        if (kept.length !== ring.length) dropped = true;
        if (kept.length >= 6) rings.push(kept);
    }
    // Edges that moved may have met.
    return dropped ? unite(rings) : region;
}

/**
 * Walks along the ring with a sleeve: from each point that stays it keeps the fan of directions in
 * which a straight edge passes every point skipped so far within the tolerance, and goes on until
 * a point leaves the fan or turns back. One pass, whatever the shape.
 */
export function simplifyRing(ring: Ring, tolerance: number): Ring {
    const count = ring.length / 2;
    if (count <= 3) return ring;
    const out = new Float64Array(ring.length);
    let used = 0;
    const start = leftmost(ring);
    let anchorX = 0;
    let anchorY = 0;
    let lastX = 0;
    let lastY = 0;
    let reach = 0;
    const fan = new Fan(tolerance);
    for (let k = 0; k <= count; k++) {
        const i = 2 * ((start + k) % count);
        const x = ring[i]!;
        const y = ring[i + 1]!;
        let distance = k === 0 ? Number.NaN : Math.hypot(x - anchorX, y - anchorY);
        const goesOn = k > 0 && (reach <= tolerance || distance >= reach) && fan.holds(x - anchorX, y - anchorY);
        if (!goesOn) {
            // The last point that could be reached stays, and a new sleeve starts there.
            if (k === 0) {
                lastX = x;
                lastY = y;
            }
            out[used++] = lastX;
            out[used++] = lastY;
            anchorX = lastX;
            anchorY = lastY;
            distance = Math.hypot(x - anchorX, y - anchorY);
            reach = 0;
            fan.open();
        }
        fan.narrow(x - anchorX, y - anchorY, distance);
        if (distance > reach) reach = distance;
        lastX = x;
        lastY = y;
    }
    return used === ring.length ? ring : out.slice(0, used);
}

/** Directions, between two bounds less than half a turn apart. */
class Fan {
    private all = true;
    private lowX = 0;
    private lowY = 0;
    private highX = 0;
    private highY = 0;

    constructor(private readonly tolerance: number) {}

    open(): void {
        this.all = true;
    }

    holds(x: number, y: number): boolean {
        return this.all || (this.lowX * y - this.lowY * x >= 0 && this.highX * y - this.highY * x <= 0);
    }

    /** Leaves the directions that pass a point, at a distance, within the tolerance. */
    narrow(x: number, y: number, distance: number): void {
        if (!(distance > this.tolerance)) return;
        const sin = this.tolerance / distance;
        const cos = Math.sqrt(1 - sin * sin);
        const lowX = x * cos + y * sin;
        const lowY = y * cos - x * sin;
        const highX = x * cos - y * sin;
        const highY = y * cos + x * sin;
        if (this.all || this.lowX * lowY - this.lowY * lowX > 0) {
            this.lowX = lowX;
            this.lowY = lowY;
        }
        if (this.all || this.highX * highY - this.highY * highX < 0) {
            this.highX = highX;
            this.highY = highY;
        }
        this.all = false;
    }
}

/** The point farthest left, and of several the topmost: a corner whatever the rest looks like. */
function leftmost(ring: Ring): number {
    let best = 0;
    for (let i = 2; i < ring.length; i += 2) {
        const x = ring[i]!;
        if (x < ring[best]! || (x === ring[best] && ring[i + 1]! < ring[best + 1]!)) best = i;
    }
    return best / 2;
}
