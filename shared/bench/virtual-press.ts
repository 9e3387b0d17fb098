import { coverage } from '../burn/coverage';
import { depthOf, type LawNumbers } from '../burn/dose';
import { depthField, doseField } from '../burn/dose-field';
import { bounds, contains } from '../geometry/measure';
import type { Bounds, Region } from '../geometry/region';
import { ReachMap } from './reach-map';
import { edgeTiles, type Tile, tilesOver } from './tiles';

/** One half as it is burnt: its region in the coordinates in which the halves meet, and how the laser burns it. */
export interface BurntHalf {
    readonly region: Region;
    readonly law: LawNumbers;
    /** J/mm2 of each pass. */
    readonly dose: number;
    readonly passes: number;
    /** Standard deviation of the beam's profile, mm. */
    readonly sigma: number;
}

export interface PressHalves {
    readonly pocket: BurntHalf;
    /** Turned over: mirrored, and laid where it goes in. */
    readonly veneer: BurntHalf;
    /** Where the parts are that go in, turned over, and their walls around them. What else is left of the veneer is waste. */
    readonly parts: Region;
    /** Thickness of the veneer, mm. */
    readonly thickness: number;
    /** Glue film under it, mm. */
    readonly film: number;
}

export interface Pressed {
    /** How far the veneer goes in before board or glue stops it, mm below the face. */
    readonly insertion: number;
    /** It lies on the glue film all over, rather than on a few places. */
    readonly bottoms: boolean;
    /** Space between the two once pressed, mm3: what glue could fill. */
    readonly gapVolume: number;
    /** Widest upright gap in each cell, mm; NaN where no veneer lies over the board. */
    readonly gap: Float32Array;
    readonly cells: {
        readonly x: number;
        readonly y: number;
        readonly cell: number;
        readonly columns: number;
        readonly rows: number;
    };
    /** Where it is stopped before the film, tightest first; mm. */
    readonly stops: readonly { readonly x: number; readonly y: number; readonly reach: number }[];
    /** The outlines were too long for cells of half a sigma, so walls are coarser than the beam makes them. */
    readonly coarse: boolean;
}

/** How many sigmas of a beam a tile has to see beyond its edge. */
const margin = 4;
/** mm along a tile's edge, and the most cells that all tiles together may have. */
const tileSize = 2;
const mostCells = 6_000_000;
/** Contact on less than this is crushed by the press, mm2: own judgement, no source. */
const crushed = 0.05;
/** Short of the film by less than this still counts as lying on it, mm. */
const asGood = 0.005;

/**
 * Presses the turned-over veneer into its pocket: the burnt surfaces of both, as the beam makes
 * them, are laid over each other cell by cell. A cell of the veneer whose face lies d below its
 * plane, over a board burnt z deep, lets the veneer go in by z + d; the least of these, but for
 * what the press crushes, is how far it goes. Own derivation; agrees with `pressFit` on straight
 * walls, and also sees narrow places, where the pocket is shallower and the veneer lower.
 * Undefined when a half is empty or its figures are none.
 */
export function virtualPress(halves: PressHalves): Pressed | undefined {
    const box = bounds(halves.parts);
    const { pocket, veneer, thickness } = halves;
    const figures = [pocket.sigma, veneer.sigma, pocket.dose, veneer.dose, thickness];
    if (box === undefined || !figures.every((value) => value > 0 && value < 1e6) || !(halves.film >= 0)) return undefined;
    const tiles = tilesOver(box, tileSize);
    if (tiles === undefined) return undefined;
    const pad = margin * Math.max(pocket.sigma, veneer.sigma);
    const withEdges = edgeTiles(tiles, [pocket.region, veneer.region, halves.parts], pad);
    const finest = Math.min(pocket.sigma, veneer.sigma) / 2;
    const cell = Math.max(finest, Math.sqrt((withEdges.size * (tileSize + 2 * pad) ** 2) / mostCells));
    const map = new ReachMap(box, depthOfWide(pocket) + thickness);
    for (const tile of tiles.all) {
        if (withEdges.has(tile.index)) pressTile(halves, tile, pad, cell, map);
        else pressPlain(halves, tile, box, map);
    }
    return concluded(map, depthOfWide(pocket) - halves.film, cell > finest * (1 + 1e-9));
}

/** Depth of a wide area, mm. */
function depthOfWide({ law, dose, passes }: BurntHalf): number {
    return depthOf(law, dose, passes);
}

/** A tile that no edge comes near is the same all over. */
function pressPlain({ pocket, veneer, parts }: PressHalves, tile: Tile, box: Bounds, map: ReachMap): void {
    const x = tile.x + tile.width / 2;
    const y = tile.y + tile.height / 2;
    if (!contains(parts, x, y) || contains(veneer.region, x, y)) return;
    map.addPlain(tile, contains(pocket.region, x, y) ? depthOfWide(pocket) : 0, box);
}

function pressTile(halves: PressHalves, tile: Tile, pad: number, cell: number, map: ReachMap): void {
    const grid = {
        x: tile.x - pad,
        y: tile.y - pad,
        cell,
        columns: Math.ceil((tile.width + 2 * pad) / cell),
        rows: Math.ceil((tile.height + 2 * pad) / cell),
    };
    const depths = (half: BurntHalf): Float32Array | undefined => {
        const field = doseField(half.region, half.sigma, { grid });
        return field && depthField(field, half.law, half.dose, half.passes);
    };
    const pocket = depths(halves.pocket);
    const veneer = depths(halves.veneer);
    if (pocket === undefined || veneer === undefined) return;
    const parts = coverage(halves.parts, grid);
    const present = Math.min(halves.thickness * (1 - 1e-3), halves.thickness - 1e-4);
    for (let row = 0; row < grid.rows; row++) {
        const y = grid.y + (row + 0.5) * cell;
        if (y < tile.y || y >= tile.y + tile.height) continue;
        for (let column = 0; column < grid.columns; column++) {
            const x = grid.x + (column + 0.5) * cell;
            if (x < tile.x || x >= tile.x + tile.width) continue;
            const at = row * grid.columns + column;
            // Burnt through, there is no veneer left to touch anything.
            if (veneer[at]! >= present || parts[at]! < 0.5) continue;
            map.add(x, y, pocket[at]! + veneer[at]!, cell * cell);
        }
    }
}

function concluded(map: ReachMap, seat: number, coarse: boolean): Pressed {
    const limit = map.reachWhere(crushed);
    const bottoms = limit >= seat - asGood;
    const insertion = Math.max(0, Math.min(limit, seat));
    return {
        insertion,
        bottoms,
        gapVolume: map.volumeAbove(insertion),
        gap: map.gap(insertion),
        cells: map.cells,
        stops: bottoms ? [] : map.tightest(seat - asGood, 50),
        coarse,
    };
}
