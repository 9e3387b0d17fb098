import { type Region, tangledRegion } from '../../geometry/region';
import { type Path, type Stroke, widen } from '../../geometry/widen';
import { Tangled, together } from '../compose/opaque';

/** Corners of a piece, and the most that are worth the time. */
const pieceLength = 48;
const mostCorners = 40_000;

/**
 * Widens a scribble that is too tangled to be widened in one go, such as a shape blackened by a
 * thick pen: piece by piece, each with a segment in common with the next, so that no join is
 * lost, and then unites them. `tangledRegion` if even that would take too long.
 */
export function widenInPieces(paths: readonly Path[], stroke: Stroke, tolerance: number): Region {
    if (paths.reduce((sum, { points }) => sum + points.length / 2, 0) > mostCorners) return tangledRegion;
    const regions: Region[] = [];
    for (const path of paths) {
        const points = path.closed ? closeWithSeam(path.points) : path.points;
        for (let from = 0; from === 0 || from + 4 < points.length; from += 2 * (pieceLength - 2)) {
            const piece = { points: points.subarray(from, from + 2 * pieceLength), closed: false };
            regions.push(widen([piece], { ...stroke, cap: 'butt' }, tolerance));
        }
        if (!path.closed && stroke.cap !== 'butt') regions.push(...ends(points).map((end) => widen([end], stroke, tolerance)));
    }
    if (regions.includes(tangledRegion)) return tangledRegion;
    try {
        return together(regions);
    } catch (error) {
        if (error instanceof Tangled) return tangledRegion;
        throw error;
    }
}

/** A closed path's points with the first two again, for the joins at its seam. */
function closeWithSeam(points: Float64Array): Float64Array {
    const out = new Float64Array(points.length + 4);
    out.set(points);
    out.set(points.subarray(0, 4), points.length);
    return out;
}

/** The very ends of an open path, long enough to have a direction, to carry its caps. */
function ends(points: Float64Array): Path[] {
    const size = points.length;
    return [
        [0, 2],
        [size - 2, size - 4],
    ].map(([at, next]) => {
        const x = points[at!]!;
        const y = points[at! + 1]!;
        const share = 0.01;
        const inwards = [x + share * (points[next!]! - x), y + share * (points[next! + 1]! - y)] as const;
        return { points: Float64Array.of(x, y, ...inwards), closed: false };
    });
}
