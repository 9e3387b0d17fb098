import { EdgeIndex } from './edge-index';
import { signedArea } from './measure';
import type { Region } from './region';

/** Tells in which piece of a region a place lies. */
export class Nesting {
    /** Signed area of each ring in mm2. */
    readonly areas: Float64Array;
    private readonly index: EdgeIndex;
    private readonly winding: Int32Array;

    constructor(region: Region) {
        this.index = new EdgeIndex(region.rings);
        this.areas = Float64Array.from(region.rings, signedArea);
        this.winding = new Int32Array(region.rings.length);
    }

    /** The number of the smallest outer ring around a point, even if the point is in a hole of it; -1 outside all. */
    outerAround(x: number, y: number): number {
        const met: number[] = [];
        this.index.crossings(x, y, (ring, sense) => {
            if (this.winding[ring] === 0) met.push(ring);
            this.winding[ring]! += sense;
        });
        let best = -1;
        for (const ring of met) {
            const outer = this.winding[ring] !== 0 && this.areas[ring]! > 0;
            this.winding[ring] = 0;
            if (outer && (best < 0 || this.areas[ring]! < this.areas[best]!)) best = ring;
        }
        return best;
    }
}
