import type { Bounds } from '../geometry/region';

const mostCells = 250_000;
const bins = 8192;

/** Coarse cells over an inlay, mm. */
export interface MapCells {
    readonly x: number;
    readonly y: number;
    readonly cell: number;
    readonly columns: number;
    readonly rows: number;
}

/**
 * Collects, over the whole of an inlay, how far each spot of it would let the veneer go in (its
 * reach, mm): a histogram by area, the least in each cell of a coarse map, and the mean of what is
 * wholly veneer there. Beside it, how much of the face lies open, by how deep the veneer has to be
 * in for that.
 */
export class ReachMap {
    readonly cells: MapCells;
    private readonly least: Float32Array;
    private readonly sum: Float32Array;
    private readonly solid: Float32Array;
    /** mm2 by reach, and by how far the veneer is burnt away over what is open. */
    private readonly areas = new Float64Array(bins);
    private readonly openings = new Float64Array(bins);
    private readonly bin: number;

    /** @param deepest no reach is greater than this, mm */
    constructor(box: Bounds, deepest: number) {
        const width = box.maxX - box.minX;
        const height = box.maxY - box.minY;
        const cell = Math.max(0.05, Math.sqrt((width * height) / mostCells));
        const columns = Math.max(1, Math.ceil(width / cell));
        const rows = Math.max(1, Math.ceil(height / cell));
        this.cells = { x: box.minX, y: box.minY, cell, columns, rows };
        this.least = new Float32Array(columns * rows).fill(Number.POSITIVE_INFINITY);
        this.sum = new Float32Array(columns * rows);
        this.solid = new Float32Array(columns * rows);
        this.bin = Math.max(deepest, 1e-6) / (bins - 1);
    }

    /** One fine cell of `area` mm2 around a point; `solid` where it belongs to the veneer as drawn, not to its walls. */
    add(x: number, y: number, reach: number, area: number, solid: boolean): void {
        this.count(this.areas, reach, area);
        const { columns, rows, cell } = this.cells;
        const column = Math.floor((x - this.cells.x) / cell);
        const row = Math.floor((y - this.cells.y) / cell);
        if (column >= 0 && row >= 0 && column < columns && row < rows) this.note(row * columns + column, reach, area, solid);
    }

    /** A rectangle with the same reach all over, all of it veneer. */
    addPlain(left: number, top: number, right: number, bottom: number, reach: number): void {
        this.count(this.areas, reach, (right - left) * (bottom - top));
        const { x, y, cell, columns, rows } = this.cells;
        const lastRow = Math.min(rows, Math.ceil((bottom - y) / cell));
        const lastColumn = Math.min(columns, Math.ceil((right - x) / cell));
        for (let row = Math.max(0, Math.floor((top - y) / cell)); row < lastRow; row++) {
            const height = Math.min(bottom, y + (row + 1) * cell) - Math.max(top, y + row * cell);
            for (let column = Math.max(0, Math.floor((left - x) / cell)); column < lastColumn; column++) {
                const width = Math.min(right, x + (column + 1) * cell) - Math.max(left, x + column * cell);
                if (width > 0 && height > 0) this.note(row * columns + column, reach, width * height, true);
            }
        }
    }

    /** The board is away here at the face that is seen in the end; the veneer's own face is burnt `away` mm deep. */
    addOpening(away: number, area: number): void {
        this.count(this.openings, away, area);
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

    /** mm2 whose reach is at most `reach`. */
    areaUpTo(reach: number): number {
        let sum = 0;
        for (let i = 0; i < bins && i * this.bin <= reach; i++) sum += this.areas[i]!;
        return sum;
    }

    /** Space between the surfaces when pressed in by `insertion`, mm3. */
    volumeAbove(insertion: number): number {
        let sum = 0;
        for (let i = 0; i < bins; i++) sum += this.areas[i]! * Math.max(0, i * this.bin - insertion);
        return sum;
    }

    /** mm2 of the face that neither board nor veneer fills, where the veneer has to be burnt less than `away` to fill it. */
    openFrom(away: number): number {
        let sum = 0;
        for (let i = Math.max(0, Math.ceil(away / this.bin)); i < bins; i++) sum += this.openings[i]!;
        return sum;
    }

    /** Mean gap under the veneer in each cell when pressed in by `insertion`, mm; NaN where none lies. */
    gap(insertion: number): Float32Array {
        return this.sum.map((sum, at) => (this.solid[at]! > 0 ? Math.max(0, sum / this.solid[at]! - insertion) : Number.NaN));
    }

    /** 1 in each cell in which something stops the veneer from going in further than `insertion`. */
    touching(insertion: number): Uint8Array {
        const touches = new Uint8Array(this.least.length);
        for (let at = 0; at < touches.length; at++) if (this.least[at]! <= insertion) touches[at] = 1;
        return touches;
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

    private count(histogram: Float64Array, value: number, area: number): void {
        const at = Math.max(0, Math.min(bins - 1, Math.round(value / this.bin)));
        histogram[at] = histogram[at]! + area;
    }

    private note(at: number, reach: number, area: number, solid: boolean): void {
        if (reach < this.least[at]!) this.least[at] = reach;
        if (!solid) return;
        this.sum[at]! += reach * area;
        this.solid[at]! += area;
    }
}
