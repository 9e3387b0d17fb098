import { improve } from './improve';

/**
 * A short open way through all points, from a start: along a space-filling curve first, then bettered as long as
 * that is cheap. Deterministic. Coordinates in mm, the answer is the
 * order of the points' indices.
 */
export function tour(xs: Float64Array, ys: Float64Array, startX: number, startY: number): Uint32Array {
    const order = alongCurve(xs, ys);
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

/** Cells of the curve along each side. */
const SIDE = 1 << 15;

/** The points in the order in which Hilbert's curve over their bounds passes them: cheap, and never far from the shortest way. */
function alongCurve(xs: Float64Array, ys: Float64Array): Uint32Array {
    let [minX, minY, size] = [Infinity, Infinity, 0];
    for (let i = 0; i < xs.length; i++) {
        minX = Math.min(minX, xs[i]!);
        minY = Math.min(minY, ys[i]!);
    }
    for (let i = 0; i < xs.length; i++) size = Math.max(size, xs[i]! - minX, ys[i]! - minY);
    const scale = size > 0 ? (SIDE - 1) / size : 0;
    const places = Float64Array.from(xs, (x, i) =>
        alongHilbert(Math.floor((x - minX) * scale), Math.floor((ys[i]! - minY) * scale)),
    );
    return Uint32Array.from(xs, (_, i) => i).sort((a, b) => places[a]! - places[b]!);
}

/** How far along Hilbert's curve a cell lies: the square is quartered again and again, each quarter turned to join the next. */
function alongHilbert(column: number, row: number): number {
    let [x, y] = [column, row];
    let along = 0;
    for (let half = SIDE >> 1; half > 0; half >>= 1) {
        const right = (x & half) !== 0;
        const low = (y & half) !== 0;
        along = along * 4 + (low ? (right ? 2 : 1) : right ? 3 : 0);
        x &= half - 1;
        y &= half - 1;
        if (!low) {
            if (right) [x, y] = [half - 1 - x, half - 1 - y];
            [x, y] = [y, x];
        }
    }
    return along;
}
