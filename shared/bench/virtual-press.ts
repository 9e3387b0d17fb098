import { normalCumulative } from '../burn/distributions';
import { FOOT } from '../burn/wall';
import { bounds } from '../geometry/measure';
import type { Bounds, Region } from '../geometry/region';
import { BlurredStrips, runsWhere } from './blurred-strips';
import { type EdgeBlocks, edgeBlocks } from './edge-blocks';
import { type DepthByShare, deepestOf, depthByShare, type HalfEdge, isSound } from './half-edge';
import { type MapCells, ReachMap } from './reach-map';

export interface PressHalves {
    /** In the coordinates in which the halves meet: what is burnt of the board. */
    readonly pocket: HalfEdge & { readonly region: Region };
    /** Turned over and laid where it goes in: what is left standing of the veneer. All around it is burnt; `lower` where that is deeper. */
    readonly veneer: HalfEdge & { readonly standing: Region; readonly lower?: readonly LowerFloor[] };
    /** Thickness of what stands of the veneer, mm. */
    readonly thickness: number;
    /** Glue film under it, mm. */
    readonly film: number;
    /** How far the board's face is sanded down afterwards, mm. */
    readonly sanded: number;
    /** How far it has come down since the pocket was burnt, mm. */
    readonly sunk?: number;
    /** Where the pocket's floor is another than its burn alone leaves. */
    readonly floors?: readonly LowerFloor[];
    /** How much deeper the floor lies that carries the veneer, mm; negative where it is less deep. */
    readonly carries?: number;
}

/** A place in which something else has been at work than one burn. */
export interface LowerFloor {
    readonly region: Region;
    /** How much deeper it is than that burn leaves it, mm; negative where it is less deep. */
    readonly more: number;
}

export interface Pressed {
    /** How far the veneer goes in before board or glue stops it, mm below the face. */
    readonly insertion: number;
    /** How far it would go in if nothing were in its way: down to the glue film, mm. */
    readonly seat: number;
    /** It lies on the glue film all over, rather than on a few places. */
    readonly bottoms: boolean;
    /** Space between the two once pressed, mm3: what glue could fill. */
    readonly gapVolume: number;
    /** Area over which board and veneer touch, or nearly so, mm2. */
    readonly contact: number;
    /** Area that neither fills at the face that is seen after sanding, mm2. */
    readonly open: number;
    /** Mean upright gap in each cell, mm; NaN where no veneer lies over the board. */
    readonly gap: Float32Array;
    /** 1 in each cell where something stops it before it lies on its film. */
    readonly touching: Uint8Array;
    readonly cells: MapCells;
    /** Where it is stopped before the film, tightest first; mm. */
    readonly stops: readonly { readonly x: number; readonly y: number; readonly reach: number }[];
    /** The outlines were too long for cells of the beam's own size, so walls are coarser than the beam makes them. */
    readonly coarse: boolean;
}

/** Cells in a sigma, how many sigmas of a beam a block has to see beyond its edge, and cells along a block's side at least. */
const fine = 0.75;
const margin = 4;
const leastSide = 6;
/** The most cells that are worked out one by one; and cells larger than this, mm, show no walls. */
const mostCells = 12_000_000;
const largest = 0.5;
/** Contact on less than this is crushed by the press, mm2: own judgement, no source. */
const crushed = 0.05;
/** Short of the film by less than this still counts as lying on it, mm. */
const asGood = FOOT;
/** As close as this counts as touching, mm. */
const touch = 0.01;
/** Less of the beam than this does not reach a place. */
const dark = 1e-6;

/**
 * Presses the turned-over veneer into its pocket: the burnt surfaces of both, as the beam makes
 * them, are laid over each other cell by cell. A cell of the veneer whose face lies d below its
 * plane, over a board burnt z deep, lets the veneer go in by z + d; the least of these, but for
 * what the press crushes, is how far it goes. Own derivation; agrees with `pressFit` on straight
 * edges, and also sees narrow places, where the pocket is shallower and the veneer lower.
 * Undefined when a half is empty or its figures are none.
 *
 * @param tell called now and then with the part that is done, 0 to 1; may throw to give up
 */
export function virtualPress(halves: PressHalves, tell: (part: number) => void = () => {}): Pressed | undefined {
    const box = bounds(halves.veneer.standing);
    const { pocket, veneer, thickness } = halves;
    if (box === undefined || !isSound(pocket) || !isSound(veneer) || !(thickness > 0 && thickness < 1e6)) return undefined;
    if (!(halves.film >= 0)) return undefined;
    const blocks = blocksOf(halves, box);
    if (blocks === undefined) return undefined;
    // In an opening a part is pushed in no further than until it is flush.
    const deepest = 'lean' in pocket ? Math.min(deepestOf(pocket), thickness + (halves.sunk ?? 0)) : deepestOf(pocket);
    const { floors = [], sunk = 0, carries = 0 } = halves;
    const lowest = [floors, veneer.lower ?? []].map((places) => Math.max(0, ...places.map(({ more }) => more)));
    const map = new ReachMap(box, deepest + thickness + lowest[0]! + lowest[1]!);
    layOver(halves, blocks, map, tell);
    const cell = blocks.grid.cell;
    return concluded(
        map,
        halves,
        deepest - sunk + carries - halves.film,
        cell > Math.min(pocket.sigma, veneer.sigma) * (1 + 1e-9),
    );
}

/** Cells of a part of a sigma, unless the edges are so long that larger ones have to do. */
function blocksOf({ pocket, veneer, floors = [] }: PressHalves, box: Bounds): EdgeBlocks | undefined {
    const sigma = Math.max(pocket.sigma, veneer.sigma);
    const pad = margin * sigma;
    const others = [...floors, ...(veneer.lower ?? [])].map(({ region }) => region);
    const room = { minX: box.minX - 2 * pad, minY: box.minY - 2 * pad, maxX: box.maxX + 2 * pad, maxY: box.maxY + 2 * pad };
    let cell = fine * Math.min(pocket.sigma, veneer.sigma);
    while (cell <= largest) {
        const side = Math.max(leastSide, Math.ceil(pad / cell));
        const blocks = edgeBlocks(room, cell, side, [pocket.region, veneer.standing, ...others], pad);
        const cells = blocks === undefined ? Number.POSITIVE_INFINITY : blocks.count * side * side;
        if (cells <= mostCells) return blocks;
        cell *= Number.isFinite(cells) ? Math.max(1.1, Math.sqrt(cells / mostCells)) : 4;
    }
    return undefined;
}

function layOver(halves: PressHalves, blocks: EdgeBlocks, map: ReachMap, tell: (part: number) => void): void {
    const dug = new BlurredStrips(halves.pocket.region, blocks, halves.pocket.sigma);
    const stands = new BlurredStrips(halves.veneer.standing, blocks, halves.veneer.sigma);
    const { floors: lowerFloors, sunk, pocket, veneer } = halves;
    const floors = new Floors(lowerFloors, sunk, pocket.sigma, blocks);
    const under = new Floors(veneer.lower, 0, veneer.sigma, blocks);
    const { grid, side, across, down, near } = blocks;
    const pocketRow = new Float32Array(grid.columns);
    const veneerRow = new Float32Array(grid.columns);
    const spot = new SpotReader(halves, map, grid.cell);
    const size = side * grid.cell;
    for (let strip = 0; strip < down; strip++) {
        tell(strip / down);
        dug.advance();
        stands.advance();
        floors.advance();
        under.advance();
        const top = grid.y + strip * size;
        for (const [from, to] of runsWhere(across, (column) => near[strip * across + column] === 1)) {
            for (let row = 0; row < side; row++) {
                dug.row(row, from * side, to * side, pocketRow);
                stands.row(row, from * side, to * side, veneerRow);
                const lower = floors.row(row, from * side, to * side);
                const higher = under.row(row, from * side, to * side);
                const y = top + (row + 0.5) * grid.cell;
                for (let column = from * side; column < to * side; column++) {
                    const x = grid.x + (column + 0.5) * grid.cell;
                    spot.read(x, y, pocketRow[column]!, veneerRow[column]!, lower[column]!, higher[column]!);
                }
            }
        }
        for (let column = 0; column < across; column++) {
            if (near[strip * across + column] === 1) continue;
            const isDug = dug.level(column) > 0.5;
            const isStanding = stands.level(column) > 0.5;
            spot.readPlain(grid.x + column * size, top, size, isDug, isStanding, floors.level(column), under.level(column));
        }
    }
}

/** How much lower a half's floor lies than its burn alone leaves it, strip by strip, mm. */
class Floors {
    private readonly parts: { readonly strips: BlurredStrips; readonly more: number }[];
    private readonly sum: Float32Array;
    private readonly one: Float32Array;

    constructor(
        floors: readonly LowerFloor[] = [],
        private readonly sunk = 0,
        sigma: number,
        blocks: EdgeBlocks,
    ) {
        this.parts = floors.map(({ region, more }) => ({ strips: new BlurredStrips(region, blocks, sigma), more }));
        this.sum = new Float32Array(blocks.grid.columns).fill(-sunk);
        this.one = new Float32Array(floors.length === 0 ? 0 : blocks.grid.columns);
    }

    advance(): void {
        for (const { strips } of this.parts) strips.advance();
    }

    row(row: number, from: number, to: number): Float32Array {
        if (this.parts.length === 0) return this.sum;
        this.sum.fill(-this.sunk, from, to);
        for (const { strips, more } of this.parts) {
            strips.row(row, from, to, this.one);
            for (let column = from; column < to; column++) this.sum[column]! += more * this.one[column]!;
        }
        return this.sum;
    }

    level(column: number): number {
        return this.parts.reduce((sum, { strips, more }) => sum + more * strips.level(column), -this.sunk);
    }
}

/** Turns the beam's share at a spot of both halves into how far the veneer can go in there. */
class SpotReader {
    private readonly area: number;
    private readonly dug: DepthByShare;
    private readonly away: DepthByShare;
    private readonly present: number;
    private readonly sanded: number;
    private readonly seen: number | undefined;

    constructor(
        halves: PressHalves,
        private readonly map: ReachMap,
        cell: number,
    ) {
        this.area = cell * cell;
        this.dug = depthByShare(halves.pocket);
        this.away = depthByShare(halves.veneer);
        // Burnt through, there is no veneer left to touch anything.
        this.present = Math.min(halves.thickness * (1 - 1e-3), halves.thickness - 1e-4);
        this.sanded = halves.sanded;
        this.seen = shareSeen(halves);
    }

    /** @param lower and `higher`: how much lower the floors of pocket and veneer lie than the burns alone leave them, mm */
    read(x: number, y: number, dug: number, stands: number, lower: number, higher: number): void {
        if (stands <= dark && dug <= this.dug.rim) return;
        const pocket = Math.max(0, this.dug.at(dug) + lower);
        const away = Math.max(0, this.away.at(1 - stands) + higher);
        const there = stands > dark && away < this.present;
        if (pocket > this.sanded) this.map.addOpening(there && this.isSeen(stands) ? away : Number.POSITIVE_INFINITY, this.area);
        if (there) this.map.add(x, y, pocket + away, this.area, stands >= 0.5);
    }

    /** Whether what stands here reaches up to the face that is seen in the end: a part that lies face up is narrower there. */
    private isSeen(stands: number): boolean {
        return this.seen === undefined || stands >= this.seen;
    }

    readPlain(x: number, y: number, size: number, dug: boolean, stands: boolean, lower: number, higher: number): void {
        const depth = dug ? Math.max(0, this.dug.at(1) + lower) : 0;
        const away = Math.max(0, higher);
        if (stands) this.map.addPlain(x, y, x + size, y + size, depth + away);
        if (depth > this.sanded) this.map.addOpening(stands ? away : Number.POSITIVE_INFINITY, size * size);
    }
}

/** Share of what stands from which on a part that lies face up reaches the face that is seen in the end, once it lies as deep as it can. */
function shareSeen({ pocket, veneer, thickness, sanded }: PressHalves): number | undefined {
    if (!('lean' in veneer) || !(veneer.faceUp && veneer.lean > 0)) return undefined;
    const level = Math.min(deepestOf(pocket), thickness) - sanded;
    const out = veneer.tight + veneer.lean * (1 - Math.min(1, Math.max(0, level / thickness)));
    return normalCumulative(-out / veneer.sigma);
}

function concluded(map: ReachMap, { sanded }: PressHalves, seat: number, coarse: boolean): Pressed {
    const limit = map.reachWhere(crushed);
    const bottoms = limit >= seat - asGood;
    const insertion = Math.max(0, Math.min(limit, seat));
    return {
        insertion,
        seat: Math.max(0, seat),
        bottoms,
        gapVolume: map.volumeAbove(insertion),
        contact: bottoms ? 0 : map.areaUpTo(insertion + touch),
        open: map.openFrom(insertion - sanded),
        gap: map.gap(insertion),
        touching: bottoms ? new Uint8Array(map.cells.columns * map.cells.rows) : map.touching(insertion + touch),
        cells: map.cells,
        stops: bottoms ? [] : map.tightest(seat - asGood, 50),
        coarse,
    };
}
