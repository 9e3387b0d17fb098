import type { Region } from '../geometry/region';
import { partitionPoint } from '../quantity/partition-point';

/** Stretches of a horizontal line, in mm, sorted: from0, to0, from1, to1, … */
export type Spans = readonly number[];

/** Where a region is cut by the horizontal line at `y`. */
export function crossings(region: Region, y: number): Spans {
    const at: number[] = [];
    for (const ring of region.rings) {
        const size = ring.length;
        let fromX = ring[size - 2] ?? 0;
        let fromY = ring[size - 1] ?? 0;
        for (let i = 0; i + 1 < size; i += 2) {
            const toX = ring[i]!;
            const toY = ring[i + 1]!;
            if (fromY > y !== toY > y) at.push(fromX + ((y - fromY) / (toY - fromY)) * (toX - fromX));
            fromX = toX;
            fromY = toY;
        }
    }
    return at.sort((a, b) => a - b);
}

/** Total length of the spans, mm. */
export function spanLength(spans: Spans): number {
    let sum = 0;
    for (let i = 0; i + 1 < spans.length; i += 2) sum += spans[i + 1]! - spans[i]!;
    return sum;
}

/** Whether `x` lies in one of the spans. */
export function inSpans(spans: Spans, x: number): boolean {
    return partitionPoint(spans.length, (index) => spans[index]! <= x) % 2 === 1;
}
