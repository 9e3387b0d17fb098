import { intersect, subtract } from '../../geometry/boolean';
import { bounds, vertexCount } from '../../geometry/measure';
import type { Bounds, Region } from '../../geometry/region';
import { darkWithin } from './dark-within';
import { bare, clear, extremeThrough, type Filter, flat, grouped, isClosed, keyOf, over } from './filter';
import { type Leaf, type Node, overlap } from './nodes';
import { checked, layDown, together } from './opaque';
import type { Shading } from './shading';

/** Thrown where the corners that were allowed are used up. */
export class TooMuch extends Error {}

/** A part of the plane that is seen through the same paint all over. */
interface Cell {
    readonly region: Region;
    readonly box: Bounds;
    readonly filter: Filter;
}

/** What becomes of a cell once more paint is known to lie on it; undefined if it need not be followed any further. */
type Settle = (cell: Cell) => Cell | undefined;

/**
 * The partition of a place by what it is seen through, from the topmost paint down: a cell is cut
 * by each area below it, and left alone as soon as nothing further down can change on which side of the
 * threshold it looks. Cells seen through the same are one.
 */
export class Cells {
    private readonly shadings = new Map<Shading, number>();

    /** `left` counts down the corners that booleans are asked about; what is dark goes to `dark`. `budget` is shared with others. */
    constructor(
        private readonly threshold: number,
        public left: number,
        private readonly dark: Region[],
        private readonly budget: { points: number },
    ) {}

    /** Looks at a region through nodes in painter's order, on bare wood. Throws `TooMuch` and `Tangled`. */
    solve(region: Region, nodes: readonly Node[]): void {
        const box = bounds(region);
        if (box === undefined) return;
        for (const cell of this.through(nodes, [{ region, box, filter: clear }], this.decide)) {
            this.decide({ ...cell, filter: over(cell.filter, bare) });
        }
    }

    private through(nodes: readonly Node[], cells: readonly Cell[], settle: Settle): Cell[] {
        let open = cells.filter(({ filter }) => !isClosed(filter));
        const closed = cells.filter(({ filter }) => isClosed(filter));
        for (let at = nodes.length - 1; at >= 0 && open.length > 0; at--) {
            const node = nodes[at]!;
            const run: Leaf[] = [];
            for (let next: Node | undefined = node; next !== undefined && isPlain(next); next = nodes[--at]) run.unshift(next);
            if (run.length > 0) at++;
            const found = open.flatMap((cell) => {
                if (run.length > 0) return this.underRun(cell, run, settle);
                if (!overlap(cell.box, node.box)) return [cell];
                return node.kind === 'leaf' ? this.under(cell, node, settle) : this.underGroup(cell, node, settle);
            });
            closed.push(...found.filter(({ filter }) => isClosed(filter)));
            open = this.merged(found.filter(({ filter }) => !isClosed(filter)));
        }
        return [...open, ...closed];
    }

    private under(cell: Cell, { region, filter }: Leaf, settle: Settle): Cell[] {
        const within = this.common(cell.region, region);
        if (within.rings.length === 0) return [cell];
        const settled = this.cellOf(within, over(cell.filter, filter), settle);
        return [...this.rest(cell, this.without(cell.region, region)), ...settled];
    }

    /** Opaque areas of one tone each, of which only what is seen of them counts. */
    private underRun(cell: Cell, run: readonly Leaf[], settle: Settle): Cell[] {
        const near = run.filter(({ box }) => overlap(box, cell.box));
        if (near.length === 0) return [cell];
        this.spend(...near.map(({ region }) => region));
        // All that matters at the end is on which side of the threshold it looks.
        const twoTone = settle === this.decide && cell.filter.kind === 'flat';
        const sheets = near.map(({ region, filter }) => {
            const darkness = extremeThrough(twoTone ? over(cell.filter, filter) : filter, 0, 0);
            return { region, key: twoTone ? Number(darkness > this.threshold) : darkness };
        });
        let { region } = cell;
        const settled: Cell[] = [];
        for (const [key, shown] of layDown(sheets)) {
            const within = this.common(cell.region, shown);
            if (within.rings.length === 0) continue;
            region = this.without(region, shown);
            settled.push(...this.cellOf(within, twoTone ? flat(key, 0) : over(cell.filter, flat(key, 0)), settle));
        }
        return [...this.rest(cell, region), ...settled];
    }

    private underGroup(cell: Cell, { nodes, opacity }: Node & { kind: 'group' }, settle: Settle): Cell[] {
        const inner = this.through(nodes, [{ ...cell, filter: clear }], keep);
        return inner.flatMap(({ region, filter }) =>
            filter === clear ? this.rest(cell, region) : this.cellOf(region, over(cell.filter, grouped(opacity, filter)), settle),
        );
    }

    private readonly decide: Settle = (cell) => {
        const { region, filter } = cell;
        if (extremeThrough(filter, 0, 0) > this.threshold) this.dark.push(region);
        else if (extremeThrough(filter, 1, 1) > this.threshold) {
            if (!isClosed(filter)) return cell;
            this.dark.push(darkWithin(region, filter, this.threshold, this.budget));
        }
        return undefined;
    };

    private rest(cell: Cell, region: Region): Cell[] {
        const box = bounds(region);
        return box === undefined ? [] : [{ region, box, filter: cell.filter }];
    }

    private cellOf(region: Region, filter: Filter, settle: Settle): Cell[] {
        const box = bounds(region);
        const settled = box === undefined ? undefined : settle({ region, box, filter });
        return settled === undefined ? [] : [settled];
    }

    private merged(cells: readonly Cell[]): Cell[] {
        if (cells.length <= 1) return [...cells];
        const alike = new Map<string, Cell[]>();
        for (const cell of cells) {
            const key = keyOf(cell.filter, this.shadings);
            const group = alike.get(key);
            if (group === undefined) alike.set(key, [cell]);
            else group.push(cell);
        }
        return [...alike.values()].flatMap((group) => {
            const [first, ...others] = group;
            if (others.length === 0) return [first!];
            const regions = group.map(({ region }) => region);
            this.spend(...regions);
            return this.rest(first!, together(regions));
        });
    }

    private common(a: Region, b: Region): Region {
        this.spend(a, b);
        return checked(intersect(a, b));
    }

    private without(a: Region, b: Region): Region {
        this.spend(a, b);
        return checked(subtract(a, b));
    }

    private spend(...regions: readonly Region[]): void {
        for (const region of regions) this.left -= vertexCount(region);
        if (this.left < 0) throw new TooMuch();
    }
}

const keep: Settle = (cell) => cell;

/** An opaque area of one tone. */
function isPlain(node: Node): node is Leaf {
    return node.kind === 'leaf' && node.closed && node.filter.kind === 'flat';
}
