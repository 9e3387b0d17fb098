import { subtract } from '../../geometry/boolean';
import { bounds } from '../../geometry/measure';
import { type Bounds, type Ring, tangledRegion } from '../../geometry/region';
import type { ArtPart } from '../art';

/** Comparisons of parts within one group before overlaps are left as they are. */
const most = 200_000;

/**
 * A translucent group is seen through as a whole: where its parts overlap only the topmost shows.
 * Cuts each part from `from` on by those painted after it. (Exact where the parts themselves were
 * opaque; translucent parts of a translucent group hide a little more than they would,
 * and what is too tangled to cut stays whole.)
 */
export function flattenGroup(parts: ArtPart[], from: number): void {
    const boxes = parts.slice(from).map(({ region }) => bounds(region));
    let compared = 0;
    for (let i = from; i < parts.length; i++) {
        const part = parts[i]!;
        const box = boxes[i - from];
        const above: Ring[] = [];
        for (let j = i + 1; j < parts.length && compared < most; j++) {
            compared++;
            const other = boxes[j - from];
            if (box !== undefined && other !== undefined && overlap(box, other)) above.push(...parts[j]!.region.rings);
        }
        if (above.length === 0) continue;
        const region = subtract(part.region, { rings: above });
        if (region !== tangledRegion) parts[i] = { ...part, region };
    }
    const kept = parts.slice(from).filter(({ region }) => region.rings.length > 0);
    parts.splice(from, parts.length - from, ...kept);
}

function overlap(a: Bounds, b: Bounds): boolean {
    return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}
