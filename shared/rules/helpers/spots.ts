import { bounds } from '../../geometry/measure';
import type { Region } from '../../geometry/region';
import type { MarkedSpot } from '../../recipe/finding';

/** More places than this on one finding help nobody. */
const most = 50;

/** Where regions lie on a blank, for pointing at them. */
export function spotsOf(blank: string, regions: readonly Region[]): MarkedSpot[] {
    return regions.slice(0, most).flatMap((region) => {
        const box = bounds(region);
        if (box === undefined) return [];
        const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
        return [{ blank, x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2, size }];
    });
}

/** Where narrow places lie. */
export function narrowSpots(blank: string, places: readonly { x: number; y: number; width: number }[]): MarkedSpot[] {
    return places.slice(0, most).map(({ x, y, width }) => ({ blank, x, y, size: width }));
}
