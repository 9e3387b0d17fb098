import type { Region } from '../../geometry/region';
import type { Grid } from './contour';
import { darknessThrough, type Filter, gatherShadings } from './filter';
import type { Node } from './nodes';
import { locatorOf, type Shading } from './shading';

/** What is seen at the points of a grid through paint: `add + keep · below` at each. */
interface Seen {
    readonly add: Float32Array;
    readonly keep: Float32Array;
}

/** How dark nodes in painter's order, laid on bare wood, look at the points of a grid. O(points of the grid in each area + its edges' rows). */
export function scanNodes(nodes: readonly Node[], grid: Grid): Float32Array {
    return laid(nodes, grid).add;
}

function laid(nodes: readonly Node[], grid: Grid): Seen {
    const size = grid.columns * grid.rows;
    const seen: Seen = { add: new Float32Array(size), keep: new Float32Array(size).fill(1) };
    for (const node of nodes) {
        if (node.kind === 'leaf') {
            paint(seen, node.region, node.filter, grid);
            continue;
        }
        const inner = laid(node.nodes, grid);
        const { opacity } = node;
        for (let i = 0; i < size; i++) {
            const through = 1 - opacity + opacity * inner.keep[i]!;
            seen.add[i] = opacity * inner.add[i]! + through * seen.add[i]!;
            seen.keep[i] = through * seen.keep[i]!;
        }
    }
    return seen;
}

function paint({ add, keep }: Seen, region: Region, filter: Filter, grid: Grid): void {
    const through = pointwise(filter);
    for (const [row, crossings] of rowsOf(region, grid)) {
        crossings.sort((a, b) => a - b);
        const y = grid.y + grid.step * row;
        for (let i = 0; i + 1 < crossings.length; i += 2) {
            const first = Math.max(0, Math.ceil((crossings[i]! - grid.x) / grid.step));
            const last = Math.min(grid.columns - 1, Math.ceil((crossings[i + 1]! - grid.x) / grid.step) - 1);
            for (let column = first; column <= last; column++) {
                const at = row * grid.columns + column;
                const x = grid.x + grid.step * column;
                const nothing = through(x, y, 0);
                const light = through(x, y, 1) - nothing;
                add[at] = nothing + light * add[at]!;
                keep[at] = light * keep[at]!;
            }
        }
    }
}

/** What is seen through a filter at a place in mm of something as dark as `below`. */
export function pointwise(filter: Filter): (x: number, y: number, below: number) => number {
    if (filter.kind === 'flat') return (_x, _y, below) => filter.add + filter.keep * below;
    const shadings = new Set<Shading>();
    gatherShadings(filter, shadings);
    const locators = new Map([...shadings].map((shading) => [shading, locatorOf(shading.shape)]));
    return (x, y, below) => darknessThrough(filter, below, (shading) => locators.get(shading)!(x, y));
}

/** Where a region's edges cross the rows of a grid, by row. */
function rowsOf({ rings }: Region, { y: top, step, rows }: Grid): Map<number, number[]> {
    const found = new Map<number, number[]>();
    for (const ring of rings) {
        let ax = ring[ring.length - 2]!;
        let ay = ring[ring.length - 1]!;
        for (let i = 0; i < ring.length; i += 2) {
            const bx = ring[i]!;
            const by = ring[i + 1]!;
            const first = Math.max(0, Math.ceil((Math.min(ay, by) - top) / step));
            const last = Math.min(rows - 1, Math.ceil((Math.max(ay, by) - top) / step) - 1);
            for (let row = first; row <= last; row++) {
                const x = ax + ((top + step * row - ay) / (by - ay)) * (bx - ax);
                const crossings = found.get(row);
                if (crossings === undefined) found.set(row, [x]);
                else crossings.push(x);
            }
            ax = bx;
            ay = by;
        }
    }
    return found;
}
