/** The same points in the opposite order. */
export function reversed(points: Float64Array): Float64Array {
    const size = points.length;
    const out = new Float64Array(size);
    for (let i = 0; i + 1 < size; i += 2) {
        out[i] = points[size - 2 - i]!;
        out[i + 1] = points[size - 1 - i]!;
    }
    return out;
}
