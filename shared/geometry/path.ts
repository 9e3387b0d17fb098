import { unitsPerMillimetre } from './grid';
import { signedArea } from './measure';
import type { Ring } from './region';

/** A ring that grows corner by corner. Whole units; corners that repeat the one before are left out. */
export class Path {
    private points = new Float64Array(256);
    private size = 0;

    clear(): void {
        this.size = 0;
    }

    point(x: number, y: number): void {
        const { size } = this;
        if (size > 0 && this.points[size - 2] === x && this.points[size - 1] === y) return;
        this.hold(size + 2);
        this.points[size] = x;
        this.points[size + 1] = y;
        this.size = size + 2;
    }

    /** Corners number `first` to `last` of a list of points, none of which repeats the one before. */
    corners(points: Float64Array, first: number, last: number): void {
        if (first > last) return;
        this.point(points[2 * first]!, points[2 * first + 1]!);
        const rest = points.subarray(2 * first + 2, 2 * last + 2);
        this.hold(this.size + rest.length);
        this.points.set(rest, this.size);
        this.size += rest.length;
    }

    private hold(size: number): void {
        if (size <= this.points.length) return;
        const larger = new Float64Array(2 * size);
        larger.set(this.points.subarray(0, this.size));
        this.points = larger;
    }

    /** Corners number `from` down to `to`. */
    cornersBack(points: Float64Array, from: number, to: number): void {
        for (let k = from; k >= to; k--) this.point(points[2 * k]!, points[2 * k + 1]!);
    }

    /** In millimetres; undefined where it encloses nothing. */
    ring(): Ring | undefined {
        const { points } = this;
        let { size } = this;
        while (size >= 4 && points[size - 2] === points[0] && points[size - 1] === points[1]) size -= 2;
        if (size < 6) return undefined;
        const ring = new Float64Array(size);
        for (let i = 0; i < size; i++) ring[i] = points[i]! / unitsPerMillimetre;
        return signedArea(ring) === 0 ? undefined : ring;
    }
}
