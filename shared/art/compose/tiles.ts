import { intersect } from '../../geometry/boolean';
import { bounds } from '../../geometry/measure';
import type { Bounds, Region } from '../../geometry/region';
import { rectangle } from '../../geometry/shapes';
import { Cells, TooMuch } from './cells';
import { contour } from './contour';
import { finestStep, gridOver } from './dark-within';
import { cutNodes, eachLeaf, type Node } from './nodes';
import { checked, Tangled } from './opaque';
import { scanNodes } from './scan';

/** A place with more areas than this is looked at in halves, unless it is small (mm) or a part of a part already. */
const fewNodes = 24;
const small = 1;
const deepest = 10;
/** Corners that booleans may be asked about, in all and in one tile. */
const mostCorners = 1_200_000;
const mostInTile = 200_000;
/** Points of all areas that may be looked at where that is used up, and how coarse (mm) that may become. */
const mostScanned = 150_000_000;
const coarsestStep = 0.5;

/** A place that is to be looked at in points, and the area (mm2) of all that lies there. */
interface Waiting {
    readonly region: Region;
    readonly nodes: readonly Node[];
    readonly box: Bounds;
    readonly covered: number;
}

/** Works out what looks dark where paint is looked through, one place after the other. */
export class Tiles {
    readonly dark: Region[] = [];
    /** mm between the points of the coarsest grid that was needed. */
    grid: number | undefined;
    private left = mostCorners;
    private readonly waiting: Waiting[] = [];

    constructor(
        private readonly threshold: number,
        private readonly budget: { points: number },
    ) {}

    /** Looks at a region through all the nodes, in painter's order. */
    look(region: Region, nodes: readonly Node[], depth = 0): void {
        const box = bounds(region);
        if (box === undefined) return;
        const here = cutNodes(nodes, box);
        if (here === undefined) throw new Tangled();
        const width = box.maxX - box.minX;
        const height = box.maxY - box.minY;
        if (here.length <= 1 || leavesOf(here) <= fewNodes || depth >= deepest || Math.max(width, height) < small) {
            this.solve(region, here, box);
            return;
        }
        const [x, y] = width > height ? [box.minX + width / 2, box.maxY] : [box.maxX, box.minY + height / 2];
        const first = rectangle(box.minX, box.minY, x - box.minX, y - box.minY);
        const second = width > height ? rectangle(x, box.minY, width / 2, height) : rectangle(box.minX, y, width, height / 2);
        for (const half of [first, second]) this.look(checked(intersect(region, half)), here, depth + 1);
    }

    private solve(region: Region, nodes: readonly Node[], box: Bounds): void {
        const before = this.dark.length;
        const allowed = Math.min(this.left, mostInTile);
        const cells = new Cells(this.threshold, allowed, this.dark, this.budget);
        try {
            cells.solve(region, nodes);
        } catch (error) {
            if (!(error instanceof TooMuch || error instanceof Tangled)) throw error;
            this.dark.length = before;
            this.wait(region, nodes, box);
        }
        this.left -= allowed - cells.left;
    }

    /** Looks at what was too much in points of a grid, as far apart everywhere as all of it allows. */
    finish(): void {
        const covered = this.waiting.reduce((sum, tile) => sum + tile.covered, 0);
        const step = Math.max(finestStep, Math.sqrt(covered / mostScanned));
        for (const { region, nodes, box } of this.waiting) {
            const grid = gridOver(box, step);
            if (grid.step > coarsestStep) throw new Tangled();
            this.grid = Math.max(this.grid ?? 0, grid.step);
            this.dark.push(checked(intersect(region, contour(scanNodes(nodes, grid), grid, this.threshold))));
        }
    }

    private wait(region: Region, nodes: readonly Node[], box: Bounds): void {
        let covered = areaOf(box);
        eachLeaf(nodes, (leaf) => {
            covered += areaOf(leaf.box);
        });
        this.waiting.push({ region, nodes, box, covered });
    }
}

function areaOf({ minX, minY, maxX, maxY }: Bounds): number {
    return (maxX - minX) * (maxY - minY);
}

function leavesOf(nodes: readonly Node[]): number {
    let count = 0;
    eachLeaf(nodes, () => count++);
    return count;
}
