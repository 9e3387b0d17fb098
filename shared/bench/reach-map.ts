import type { Bounds } from '../geometry/region';
import type { Tile } from './tiles';

const mostCells = 250_000;
const bins = 8192;

/**
 * Collects, over the whole of an inlay, how far each spot of it would let the veneer go in (its
 * reach, mm): a histogram by area, and the least and the greatest in each cell of a coarse map.
 */
export class ReachMap {
    readonly cells: {
        readonly x: number;
        readonly y: number;
        readonly cell: number;
        readonly columns: number;
        readonly rows: number;
    };
    private readonly least: Float32Array;
    private readonly most: Float32Array;
    /** mm2 by reach. */
    private readonly areas = new Float64Array(bins);
    private readonly bin: number;

    /** @param deepest no reach is greater than this, mm */
    constructor(box: Bounds, deepest: number) {
        const width = box.maxX - box.minX;
        const height = box.maxY - box.minY;
        const cell = Math.max(0.05, Math.sqrt((width * height) / mostCells));
        const columns = Math.max(1, Math.ceil(width / cell));
        const rows = Math.max(1, Math.ceil(height / cell));
        this.cells = { x: box.minX, y: box.minY, cell, columns, rows };
        this.least = new Float32Array(columns * rows).fill(Number.NaN);
        this.most = new Float32Array(columns * rows).fill(Number.NaN);
        this.bin = Math.max(deepest, 1e-6) / (bins - 1);
    }

    /** One fine cell of `area` mm2 around a point. */
    add(x: number, y: number, reach: number, area: number): void {
        this.count(reach, area);
        this.note(Math.floor((x - this.cells.x) / this.cells.cell), Math.floor((y - this.cells.y) / this.cells.cell), reach);
    }

    /** A whole tile with the same reach. */
    addPlain(tile: Tile, reach: number, box: Bounds): void {
        const width = Math.min(tile.width, box.maxX - tile.x);
        const height = Math.min(tile.height, box.maxY - tile.y);
        this.count(reach, width * height);
        const { x, y, cell } = this.cells;
        const lastRow = Math.ceil((tile.y + height - y) / cell);
        const lastColumn = Math.ceil((tile.x + width - x) / cell);
        for (let row = Math.floor((tile.y - y) / cell); row < lastRow; row++) {
            for (let column = Math.floor((tile.x - x) / cell); column < lastColumn; column++) this.note(column, row, reach);
        }
    }

    /** The reach at which an area of `area` mm2 touches. Infinite when there is less than that in all. */
    reachWhere(area: number): number {
        let sum = 0;
        for (let i = 0; i < bins; i++) {
            sum += this.areas[i]!;
            if (sum >= area) return i * this.bin;
        }
        return Number.POSITIVE_INFINITY;
    }

    /** Space between the surfaces when pressed in by `insertion`, mm3. */
    volumeAbove(insertion: number): number {
        let sum = 0;
        for (let i = 0; i < bins; i++) sum += this.areas[i]! * Math.max(0, i * this.bin - insertion);
        return sum;
    }

    /** The widest gap in each cell when pressed in by `insertion`, mm. */
    gap(insertion: number): Float32Array {
        return this.most.map((reach) => Math.max(0, reach - insertion));
    }

    /** Middles of the cells that stop the veneer before `seat`, tightest first. */
    tightest(seat: number, count: number): { x: number; y: number; reach: number }[] {
        const { x, y, cell, columns } = this.cells;
        const found: { x: number; y: number; reach: number }[] = [];
        for (const [at, reach] of this.least.entries()) {
            if (!(reach < seat)) continue;
            found.push({ x: x + ((at % columns) + 0.5) * cell, y: y + (Math.floor(at / columns) + 0.5) * cell, reach });
        }
        return found.sort((a, b) => a.reach - b.reach).slice(0, count);
    }

    private count(reach: number, area: number): void {
        const at = Math.round(reach / this.bin);
        const kept = Math.max(0, Math.min(bins - 1, at));
        this.areas[kept] = this.areas[kept]! + area;
    }

    private note(column: number, row: number, reach: number): void {
        const { columns, rows } = this.cells;
        if (column < 0 || row < 0 || column >= columns || row >= rows) return;
        const at = row * columns + column;
        if (!(this.least[at]! <= reach)) this.least[at] = reach;
        if (!(this.most[at]! >= reach)) this.most[at] = reach;
    }
}
