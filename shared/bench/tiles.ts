import type { Bounds, Region } from '../geometry/region';

/** A rectangle of a larger one, mm. */
export interface Tile {
    readonly index: number;
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
}

export interface Tiling {
    readonly all: readonly Tile[];
    readonly box: Bounds;
    readonly size: number;
    readonly columns: number;
    readonly rows: number;
}

/** More tiles than this are a figure in the wrong unit. */
const most = 40_000;

/** Tiles of about a size over a box, in rows; undefined when they would be too many. */
export function tilesOver(box: Bounds, size: number): Tiling | undefined {
    const columns = Math.max(1, Math.ceil((box.maxX - box.minX) / size));
    const rows = Math.max(1, Math.ceil((box.maxY - box.minY) / size));
    if (!(columns * rows <= most)) return undefined;
    const all = Array.from({ length: columns * rows }, (_, index) => {
        const x = box.minX + (index % columns) * size;
        const y = box.minY + Math.floor(index / columns) * size;
        return { index, x, y, width: Math.min(size, box.maxX - x), height: Math.min(size, box.maxY - y) };
    });
    return { all, box, size, columns, rows };
}

/** Indices of the tiles that an edge of a region comes as near as `pad` to, as far as boxes around short stretches can tell. */
export function edgeTiles({ box, size, columns, rows }: Tiling, regions: readonly Region[], pad: number): Set<number> {
    const near = new Set<number>();
    const clamp = (value: number, end: number): number => Math.max(0, Math.min(end - 1, Math.floor(value)));
    const mark = (ax: number, ay: number, bx: number, by: number): void => {
        const left = Math.min(ax, bx) - pad;
        const top = Math.min(ay, by) - pad;
        const right = Math.max(ax, bx) + pad;
        const bottom = Math.max(ay, by) + pad;
        if (right < box.minX || left > box.maxX || bottom < box.minY || top > box.maxY) return;
        const lastColumn = clamp((right - box.minX) / size, columns);
        const lastRow = clamp((bottom - box.minY) / size, rows);
        for (let row = clamp((top - box.minY) / size, rows); row <= lastRow; row++) {
            for (let column = clamp((left - box.minX) / size, columns); column <= lastColumn; column++)
                near.add(row * columns + column);
        }
    };
    for (const ring of regions.flatMap((region) => region.rings)) {
        let x = ring[ring.length - 2]!;
        let y = ring[ring.length - 1]!;
        for (let i = 0; i + 1 < ring.length; i += 2) {
            const toX = ring[i]!;
            const toY = ring[i + 1]!;
            // A long slanting edge is taken in stretches, or its box would cover everything.
            const parts = Math.max(1, Math.min(1000, Math.ceil(Math.hypot(toX - x, toY - y) / size)));
            for (let part = 0; part < parts; part++) {
                const from = part / parts;
                const to = (part + 1) / parts;
                mark(x + (toX - x) * from, y + (toY - y) * from, x + (toX - x) * to, y + (toY - y) * to);
            }
            x = toX;
            y = toY;
        }
    }
    return near;
}
