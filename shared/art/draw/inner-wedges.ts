import type { Ring } from '../../geometry/region';
import type { Path } from '../../geometry/widen';

/**
 * Where a curve bends tighter than half the stroke's width, the stroke sweeps over the inner side
 * of the bend and beyond its centre. The chords of the flattened curve leave slits there, since
 * SVG joins straight lines on the outside only. These are the missing wedges, in user units: one
 * for each slight turn, on its inner side, as long as half the width.
 */
export function innerWedges(paths: readonly Path[], radius: number, bend: number): Ring[] {
    const wedges: Ring[] = [];
    for (const { points, closed } of paths) {
        const size = points.length;
        const corners = size / 2;
        for (let i = closed ? 0 : 1; i < (closed ? corners : corners - 1); i++) {
            const at = 2 * i;
            const before = at === 0 ? size - 2 : at - 2;
            const after = at + 2 === size ? 0 : at + 2;
            addWedge(points, before, at, after, radius, bend, wedges);
        }
    }
    return wedges;
}

function addWedge(
    points: Float64Array,
    before: number,
    at: number,
    after: number,
    radius: number,
    bend: number,
    wedges: Ring[],
): void {
    const x = points[at]!;
    const y = points[at + 1]!;
    const inX = x - points[before]!;
    const inY = y - points[before + 1]!;
    const outX = points[after]! - x;
    const outY = points[after + 1]! - y;
    const inLength = Math.hypot(inX, inY);
    const outLength = Math.hypot(outX, outY);
    const cross = inX * outY - inY * outX;
    const turn = Math.abs(Math.atan2(cross, inX * outX + inY * outY));
    // Longer chords reach over the wedge themselves; a sharper turn is a corner of the drawing.
    if (cross === 0 || turn > bend || Math.min(inLength, outLength) >= radius * Math.sin(turn)) return;
    const side = Math.sign(cross) * radius;
    const a = [x - (inY / inLength) * side, y + (inX / inLength) * side] as const;
    const b = [x - (outY / outLength) * side, y + (outX / outLength) * side] as const;
    wedges.push(cross > 0 ? Float64Array.of(x, y, ...a, ...b) : Float64Array.of(x, y, ...b, ...a));
}
