import type { BitmapArt } from '../art/bitmap';
import { dither } from '../art/raster/dither';
import type { Raster } from '../art/raster/raster';
import { resample } from '../art/raster/resample';
import { bounds } from '../geometry/measure';
import type { Region } from '../geometry/region';
import { rotate } from '../geometry/transform';
import type { ArtSource } from '../recipe/recipe';
import type { ArtPlacement } from '../recipe/step';
import type { DotGrid } from '../toolpath/dots';
import { exactTurn } from '../toolpath/edges';
import { type Hatch, hatchAlong } from '../toolpath/hatch';
import type { BlankPoint } from '../toolpath/place';
import type { PlacedArt } from './laser-plan';
import type { Memo } from './memo';
import { tonesOf } from './paint-of';
import { pointsOf } from './place-art';

/** The scan that dots are laid on: mm, rad, and the axis about which the step mirrors. */
export interface DotScan {
    readonly pitch: number;
    readonly angle: number;
    readonly axis: number | undefined;
}

/** Most dots of one picture; beyond it they are made coarser, to look at and to estimate from. */
const mostDots = 40_000_000;

/** The dots, and the greys that they stand for, cell by cell. */
export interface Dotted {
    readonly grid: DotGrid;
    readonly greys: Raster;
}

/**
 * A picture as dots on the scan lines of its step: each cell takes its grey from where it lies on the
 * picture, after the step's mirror and the placement's turn and copies, so that a dot is a length of
 * scan line and nothing has to be fitted to it. Undefined where nothing is placed, or for a pitch that
 * is none.
 */
export function dotsOf(
    art: BitmapArt,
    source: ArtSource,
    placement: ArtPlacement,
    placed: PlacedArt,
    scan: DotScan,
    memo: Memo,
): Dotted | undefined {
    const { pitch, angle } = scan;
    const within = placed.inverse ? placed.boundary : placed.region;
    if (within === undefined || !(pitch > 0) || !Number.isFinite(pitch)) return undefined;
    const seen = mirrored(within, scan.axis);
    const box = bounds(rotate(seen, -angle));
    if (box === undefined) return undefined;
    const width = box.maxX - box.minX;
    const height = box.maxY - box.minY;
    const every = Math.max(1, Math.ceil(Math.sqrt((width * height) / (pitch * pitch * mostDots))));
    const cell = pitch * every;
    const columns = Math.max(1, Math.round(width / cell));
    const rows = Math.max(1, Math.round(height / cell));
    const grid = {
        angle,
        pitch: cell,
        // The cells stand in the middle of what they cover.
        first: (box.minY + box.maxY - (rows - 1) * cell) / 2,
        left: (box.minX + box.maxX - columns * cell) / 2,
        columns,
        rows,
        every,
    };
    const darkness = greys(fitted(tonesOf(art, source, memo), art, cell), art, placement, placed, scan, grid);
    if (placed.inverse) turnInsideOut(darkness, seen, grid);
    const picture = { columns, rows, darkness };
    return { grid: { ...grid, dots: dither(picture, source.dither!.value) }, greys: picture };
}

type Cells = Omit<DotGrid, 'dots'>;

function mirrored(region: Region, axis: number | undefined): Region {
    if (axis === undefined) return region;
    return { rings: region.rings.map((ring) => ring.map((value, i) => (i % 2 === 0 ? 2 * axis - value : value))) };
}

/** A picture with more pixels than cells gives each cell the mean of its own; one with fewer stays as it is. */
function fitted(raster: Raster, art: BitmapArt, cell: number): Raster {
    const columns = Math.min(raster.columns, Math.max(1, Math.round(art.page.width / cell)));
    const rows = Math.min(raster.rows, Math.max(1, Math.round(art.page.height / cell)));
    return columns === raster.columns && rows === raster.rows ? raster : resample(raster, columns, rows);
}

function greys(
    raster: Raster,
    art: BitmapArt,
    placement: ArtPlacement,
    placed: PlacedArt,
    { angle, axis }: DotScan,
    { pitch, first, left, columns, rows }: Cells,
): Uint8Array {
    const out = new Uint8Array(columns * rows);
    const scanTurn = exactTurn(angle);
    const artTurn = exactTurn(-(placement.turn?.value ?? 0));
    const fromCopy = nearestCopy(placement, placed.centre);
    const perX = raster.columns / art.page.width;
    const perY = raster.rows / art.page.height;
    for (let row = 0; row < rows; row++) {
        const v = first + row * pitch;
        for (let column = 0; column < columns; column++) {
            const u = left + (column + 0.5) * pitch;
            const x = u * scanTurn.cos - v * scanTurn.sin;
            const y = u * scanTurn.sin + v * scanTurn.cos;
            const { x: dx, y: dy } = fromCopy(axis === undefined ? x : 2 * axis - x, y);
            const px = Math.floor((dx * artTurn.cos - dy * artTurn.sin + art.page.width / 2) * perX);
            const py = Math.floor((dx * artTurn.sin + dy * artTurn.cos + art.page.height / 2) * perY);
            if (px < 0 || py < 0 || px >= raster.columns || py >= raster.rows) continue;
            out[row * columns + column] = raster.darkness[py * raster.columns + px]!;
        }
    }
    return out;
}

/** From a place on the blank to where it lies from the middle of the nearest copy. */
function nearestCopy(placement: ArtPlacement, centre: BlankPoint): (x: number, y: number) => BlankPoint {
    const points = pointsOf(placement);
    if (points.length > 0) {
        return (x, y) => {
            let nearest = { x: x - points[0]!.x, y: y - points[0]!.y };
            for (const point of points) {
                const from = { x: x - point.x, y: y - point.y };
                if (Math.hypot(from.x, from.y) < Math.hypot(nearest.x, nearest.y)) nearest = from;
            }
            return nearest;
        };
    }
    const across = copiesAlong(placement.repeat?.columns, placement.repeat?.step.width.value);
    const down = copiesAlong(placement.repeat?.rows, placement.repeat?.step.height.value);
    return (x, y) => ({ x: across(x - centre.x), y: down(y - centre.y) });
}

/** From a distance to the middle of the grid to that from the middle of the nearest copy, along one axis. */
function copiesAlong(count = 1, step = 0): (distance: number) => number {
    if (count <= 1 || step === 0) return (distance) => distance;
    return (distance) => {
        const middle = (count - 1) / 2;
        const copy = Math.min(count - 1, Math.max(0, Math.round(distance / step + middle)));
        return distance - (copy - middle) * step;
    };
}

/** Inside the boundary what was white burns and what was black stays; outside nothing burns. */
function turnInsideOut(darkness: Uint8Array, boundary: Region, { angle, pitch, first, left, columns, rows }: Cells): void {
    const inside = hatchAlong(boundary, { angle, pitch, first, lines: rows });
    if (typeof inside === 'number') return;
    for (let row = 0; row < rows; row++) {
        let done = 0;
        for (const [from, to] of stretches(inside, row, left, pitch, columns)) {
            darkness.fill(0, row * columns + done, row * columns + from);
            for (let at = row * columns + from; at < row * columns + to; at++) darkness[at] = 255 - darkness[at]!;
            done = to;
        }
        darkness.fill(0, row * columns + done, (row + 1) * columns);
    }
}

/** The cells of a line whose middles lie in it, as ranges from the left. */
function* stretches(inside: Hatch, row: number, left: number, pitch: number, columns: number): Iterable<[number, number]> {
    const cellFrom = (u: number): number => Math.min(columns, Math.max(0, Math.ceil((u - left) / pitch - 0.5)));
    for (let i = inside.starts[row]!; i < inside.starts[row + 1]!; i++) {
        const from = cellFrom(inside.ends[2 * i]!);
        const to = cellFrom(inside.ends[2 * i + 1]!);
        if (to > from) yield [from, to];
    }
}
