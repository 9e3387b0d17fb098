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
    const apart =
        (across === 1 || Math.abs(stepX) > box.maxX - box.minX) && (down === 1 || Math.abs(stepY) > box.maxY - box.minY);
    return apart ? { rings: copies.flatMap((copy) => copy.rings) } : union(copies);
}
