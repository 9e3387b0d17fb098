import type { Ring } from '../../geometry/region';
import { reversed } from '../../geometry/reverse';

/**
 * The ring in positive sense if it is convex and goes around once, so that it is a region as it
 * is; undefined otherwise. Spares the polygon library the rectangles and circles of which most
 * drawings are made.
 */
export function convexRing(ring: Ring): Ring | undefined {
    const size = ring.length;
    let sense = 0;
    let turns = 0;
    let fromX = ring[0]! - ring[size - 2]!;
    let fromY = ring[1]! - ring[size - 1]!;
    if (fromX === 0 && fromY === 0) return undefined;
    for (let i = 0; i < size; i += 2) {
        const next = i + 2 < size ? i + 2 : 0;
        const toX = ring[next]! - ring[i]!;
        const toY = ring[next + 1]! - ring[i + 1]!;
        const cross = fromX * toY - fromY * toX;
        // A straight or repeated point is left to the polygon library, which knows what to do.
        if (cross === 0 || (sense !== 0 && cross > 0 !== sense > 0)) return undefined;
        sense = cross;
        // Going around once, the direction points rightwards after pointing leftwards exactly once.
        if (fromX < 0 && toX >= 0) turns++;
        fromX = toX;
        fromY = toY;
    }
    if (turns !== 1) return undefined;
    return sense > 0 ? ring : reversed(ring);
}
