import { addEdge } from '../burn/coverage';
import { kernelOf } from '../burn/dose-field';
import type { Region } from '../geometry/region';
import type { EdgeBlocks } from './edge-blocks';

/**
 * A region convolved with the beam, strip by strip of blocks from the top, worked out only near its
 * edges: everywhere else it is all or nothing. Holds three strips, never the whole plane.
 */
export class BlurredStrips {
    private readonly kernel: Float64Array;
    private readonly reach: number;
    /** Edges by the first strip they touch: x0, y0, x1, y1 in cells from top to bottom, and the sign. */
    private readonly waiting: number[][];
    private active: number[] = [];
    private readonly covered: Float32Array;
    /** Blurred along rows: the strip before, this one, the next. */
    private readonly along: Float32Array[];
    private readonly levels: Float32Array[];
    private strip = -2;

    /** @param sigma of the beam, mm; four of it must fit into a block */
    constructor(
        region: Region,
        private readonly blocks: EdgeBlocks,
        sigma: number,
    ) {
        const { grid, side, across, down } = blocks;
        const cells = sigma / grid.cell;
        // Covering whole cells and sharing out among whole cells each blur a little by themselves: a twelfth of a cell squared.
        this.kernel = kernelOf(Math.sqrt(Math.max(cells * cells - 1 / 6, 1e-4)));
        this.reach = Math.min(side, this.kernel.length - 1);
        this.waiting = edgesByStrip(region, blocks);
        this.covered = new Float32Array(side * grid.columns);
        this.along = [0, 1, 2].map(() => new Float32Array(side * grid.columns));
        this.levels = [0, 1, 2].map(() => new Float32Array(across));
        if (down > 0) this.advance();
    }

    /** Goes on to the next strip; the first call makes strip 0 the present one. */
    advance(): void {
        this.strip += 1;
        this.along.push(this.along.shift()!);
        this.levels.push(this.levels.shift()!);
        const coming = this.strip + 1;
        this.along[2]!.fill(0);
        this.levels[2]!.fill(0);
        if (coming < this.blocks.down) this.cover(coming);
    }

    /** 0 to 1 in a block of the present strip that no edge comes near. */
    level(column: number): number {
        return this.levels[1]![column]!;
    }

    /** Writes a row of the present strip into `out`, from one column to another, all in blocks that are near an edge. */
    row(row: number, from: number, to: number, out: Float32Array): void {
        const { kernel, reach, blocks } = this;
        const { side } = blocks;
        const { columns } = blocks.grid;
        const lineAt = (at: number): [Float32Array, number] => {
            const strip = at < 0 ? 0 : at < side ? 1 : 2;
            return [this.along[strip]!, (at - (strip - 1) * side) * columns];
        };
        const [middle, base] = lineAt(row);
        const share = kernel[0]!;
        for (let column = from; column < to; column++) out[column] = share * middle[base + column]!;
        for (let k = 1; k <= reach; k++) {
            const [above, upper] = lineAt(row - k);
            const [below, lower] = lineAt(row + k);
            const part = kernel[k]!;
            for (let column = from; column < to; column++) {
                out[column]! += part * (above[upper + column]! + below[lower + column]!);
            }
        }
    }

    private cover(strip: number): void {
        const { grid, side, across, down, near } = this.blocks;
        const { columns } = grid;
        const top = strip * side;
        this.active.push(...this.waiting[strip]!);
        this.waiting[strip] = [];
        /** Blocks that are read from this strip: those near an edge here, above or below. */
        const read = (column: number): boolean => {
            if (column < 0 || column >= across) return false;
            const at = strip * across + column;
            return (near[at] ?? 0) + (strip > 0 ? near[at - across]! : 0) + (strip + 1 < down ? near[at + across]! : 0) > 0;
        };
        const runs = runsWhere(across, (column) => read(column - 1) || read(column) || read(column + 1));
        const covered = this.covered;
        for (const [from, to] of runs) {
            for (let row = 0; row < side; row++) covered.fill(0, row * columns + from * side, row * columns + to * side);
        }
        const kept: number[] = [];
        for (let i = 0; i < this.active.length; i += 5) {
            const [x0, y0, x1, y1, sign] = this.active.slice(i, i + 5) as [number, number, number, number, number];
            addEdge(covered, columns, side, x0, y0 - top, x1, y1 - top, sign);
            if (y1 > top + side) kept.push(x0, y0, x1, y1, sign);
        }
        this.active = kept;
        this.sum(runs);
        this.blurAlong(runs, read);
    }

    /** Running sums make areas of what the edges wrote; between the runs nothing changes. */
    private sum(runs: readonly (readonly [number, number])[]): void {
        const { side, across, grid } = this.blocks;
        const { columns } = grid;
        const level = this.levels[2]!;
        for (let row = 0; row < side; row++) {
            let sum = 0;
            let column = 0;
            for (const [from, to] of [...runs, [across, across] as const]) {
                if (row === 0) level.fill(Math.min(1, Math.max(0, sum)), column, from);
                for (let at = row * columns + from * side, end = row * columns + to * side; at < end; at++) {
                    sum += this.covered[at]!;
                    this.covered[at] = Math.min(1, Math.max(0, sum));
                }
                column = to;
            }
        }
        for (const [from, to] of runs) {
            for (let column = from; column < to; column++) level[column] = this.covered[column * side]!;
        }
    }

    private blurAlong(runs: readonly (readonly [number, number])[], read: (column: number) => boolean): void {
        const { side, across, grid } = this.blocks;
        const { columns } = grid;
        const { kernel, reach, covered } = this;
        const out = this.along[2]!;
        if (runs.length === 0) return;
        for (const [first, last] of runsWhere(across, read)) {
            for (let row = 0; row < side; row++) {
                const base = row * columns;
                const from = base + first * side;
                const to = base + last * side;
                // The margins are there but for the grid's own ends, beyond which nothing lies.
                const inner = first > 0 ? from : from + reach;
                const outer = last < across ? to : to - reach;
                for (let at = from; at < to; at++) {
                    let sum = kernel[0]! * covered[at]!;
                    if (at >= inner && at < outer) {
                        for (let k = 1; k <= reach; k++) sum += kernel[k]! * (covered[at - k]! + covered[at + k]!);
                    } else {
                        for (let k = 1; k <= reach; k++) {
                            const left = at - k >= base ? covered[at - k]! : 0;
                            const right = at + k < base + columns ? covered[at + k]! : 0;
                            sum += kernel[k]! * (left + right);
                        }
                    }
                    out[at] = sum;
                }
            }
        }
    }
}

function edgesByStrip(region: Region, { grid, side, down }: EdgeBlocks): number[][] {
    const strips: number[][] = Array.from({ length: down }, () => []);
    for (const ring of region.rings) {
        const size = ring.length - (ring.length % 2);
        if (size < 6) continue;
        let x0 = (ring[size - 2]! - grid.x) / grid.cell;
        let y0 = (ring[size - 1]! - grid.y) / grid.cell;
        for (let i = 0; i < size; i += 2) {
            const x1 = (ring[i]! - grid.x) / grid.cell;
            const y1 = (ring[i + 1]! - grid.y) / grid.cell;
            const strip = Math.max(0, Math.floor(Math.min(y0, y1) / side));
            if (y0 !== y1 && strip < down && Math.max(y0, y1) > 0) {
                if (y0 < y1) strips[strip]!.push(x0, y0, x1, y1, -1);
                else strips[strip]!.push(x1, y1, x0, y0, 1);
            }
            x0 = x1;
            y0 = y1;
        }
    }
    return strips;
}

/** Stretches [from, to) of 0 … count in which something holds. */
export function runsWhere(count: number, holds: (at: number) => boolean): [number, number][] {
    const runs: [number, number][] = [];
    for (let at = 0; at < count; at++) {
        if (!holds(at)) continue;
        const from = at;
        while (at < count && holds(at)) at++;
        runs.push([from, at]);
    }
    return runs;
}
