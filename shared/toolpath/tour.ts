import { Cells } from './cells';
import { improve } from './improve';

/**
 * A short open way through all points, from a start: nearest neighbour, then bettered as long as
 * that is cheap. Deterministic. Coordinates in mm, the answer is the
 * order of the points' indices.
 */
export function tour(xs: Float64Array, ys: Float64Array, startX: number, startY: number): Uint32Array {
    const order = nearestFirst(xs, ys, startX, startY);
    improve(order, xs, ys, startX, startY);
    return order;
}

/** Length of a way through points in a given order, from a start. */
export function tourLength(order: ArrayLike<number>, xs: Float64Array, ys: Float64Array, startX: number, startY: number): number {
    let x = startX;
    let y = startY;
    let length = 0;
    for (let i = 0; i < order.length; i++) {
        const at = order[i]!;
        length += Math.hypot(xs[at]! - x, ys[at]! - y);
        x = xs[at]!;
        y = ys[at]!;
    }
    return length;
}

function nearestFirst(xs: Float64Array, ys: Float64Array, startX: number, startY: number): Uint32Array {
    const order = new Uint32Array(xs.length);
    if (xs.length === 0) return order;
    const cells = new Cells(xs, ys);
    let x = startX;
    let y = startY;
    for (let i = 0; i < xs.length; i++) {
        const [near] = cells.nearest(x, y, 1);
        order[i] = near!.point;
        cells.remove(near!.point);
        x = xs[near!.point]!;
        y = ys[near!.point]!;
    }
    return order;
}
