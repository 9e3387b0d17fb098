import { bounds } from '../../geometry/measure';
import type { Region } from '../../geometry/region';

/** Neither lies in the other nor beside a bay of it: their boxes are apart. */
export function isSideBySide(one: Region, other: Region): boolean {
    const [a, b] = [bounds(one), bounds(other)];
    if (a === undefined || b === undefined) return false;
    return a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY;
}
