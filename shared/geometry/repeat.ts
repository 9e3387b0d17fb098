import { mostCopies } from '../recipe/most-copies';
import { union } from './boolean';
import { bounds } from './measure';
import { emptyRegion, type Region } from './region';
import { translate } from './transform';

export interface Grid {
    readonly columns: number;
    readonly rows: number;
    /** From one copy to the next, in mm. */
    readonly stepX: number;
    readonly stepY: number;
}

/**
 * Copies of a region on a grid, the first one where it is. Copies that overlap are united. Empty
 * if the numbers are not finite, or for more than 10 000 copies.
 */
export function repeat(region: Region, { columns, rows, stepX, stepY }: Grid): Region {
    const box = bounds(region);
    if (box === undefined || !(columns >= 1 && rows >= 1) || !Number.isFinite(stepX + stepY)) return emptyRegion;
    const across = Math.floor(columns);
    const down = Math.floor(rows);
    if (!(across * down <= mostCopies)) return emptyRegion;
    const copies: Region[] = [];
    for (let row = 0; row < down; row++) {
        for (let column = 0; column < across; column++) copies.push(translate(region, column * stepX, row * stepY));
    }
    const isApart =
        (across === 1 || Math.abs(stepX) > box.maxX - box.minX) && (down === 1 || Math.abs(stepY) > box.maxY - box.minY);
    return isApart ? { rings: copies.flatMap((copy) => copy.rings) } : union(copies);
}

/**
 * Copies of a region, moved by each of `offsets` (mm). Copies that overlap are united. Empty if a number is not finite, or for
 * more than 10 000 copies. O(n²) in the number of offsets.
 */
export function copiesAt(region: Region, offsets: readonly { readonly x: number; readonly y: number }[]): Region {
    const box = bounds(region);
    if (box === undefined || offsets.length > mostCopies) return emptyRegion;
    if (!offsets.every(({ x, y }) => Number.isFinite(x + y))) return emptyRegion;
    const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
    const isApart = offsets.every((one, index) =>
        offsets.slice(index + 1).every(({ x, y }) => Math.abs(x - one.x) > width || Math.abs(y - one.y) > height),
    );
    const copies = offsets.map(({ x, y }) => translate(region, x, y));
    return isApart ? { rings: copies.flatMap((copy) => copy.rings) } : union(copies);
}
