import { crossings } from '../bench/section';
import { bounds } from '../geometry/measure';
import type { Region } from '../geometry/region';

const lines = 24;

/** A place well inside a region, to which a label can point: the middle of the widest of some level stretches, mm. */
export function roomyPlace(region: Region): { readonly x: number; readonly y: number } | undefined {
    const box = bounds(region);
    if (box === undefined) return undefined;
    let widest = 0;
    let place: { x: number; y: number } | undefined;
    for (let line = 0; line < lines; line++) {
        const y = box.minY + ((line + 0.5) / lines) * (box.maxY - box.minY);
        const spans = crossings(region, y);
        for (let i = 0; i + 1 < spans.length; i += 2) {
            const width = spans[i + 1]! - spans[i]!;
            if (width <= widest) continue;
            widest = width;
            place = { x: (spans[i]! + spans[i + 1]!) / 2, y };
        }
    }
    return place;
}
