import type { DotGrid } from './dots';

/** Samples of a cell along each side. */
const fine = 8;
/** Cells around one whose dots may reach it, in all directions. */
const reach = 2;
const side = 2 * reach + 1;

/**
 * How dark a field of dots looks where the beam is wider than a cell: the part of the wood within half a spot of the beam's way,
 * for each of some greys. A dot is the beam's way along its cell, so that the area of a lone one is pitch · spot + π · spot² / 4, and what
 * two share counts once. Exact up to a spot of
 * three cells, beyond which nearly any dots darken all. Own geometry, after the Minkowski-Steiner formula; that the mark is as wide as the spot is taken for granted.
 */
export interface DotGain {
    /** Part of all cells that is darkened. */
    readonly covered: number;
    /** By the grey that was asked for: points of a curve from darkness to what is covered of the wood, 0 to 1. */
    readonly curve: readonly { readonly from: number; readonly to: number }[];
}

const bins = 16;

/** @param spot diameter of the beam, mm; @param greys darkness of each cell, 0 to 255 */
export function dotGain(grid: DotGrid, spot: number, greys: Uint8Array): DotGain {
    const { columns, rows, dots } = grid;
    const touched = coveredBy(spot / grid.pitch);
    const count = new Float64Array(bins);
    const asked = new Float64Array(bins);
    const got = new Float64Array(bins);
    // A large picture is looked at in rows evenly chosen.
    const stride = Math.max(1, Math.floor((columns * rows) / mostCells));
    const near = new Uint8Array(side * side);
    for (let row = 0; row < rows; row += stride) {
        for (let column = 0; column < columns; column++) {
            for (let dy = -reach; dy <= reach; dy++) {
                for (let dx = -reach; dx <= reach; dx++) {
                    const [x, y] = [column + dx, row + dy];
                    const isIn = x >= 0 && y >= 0 && x < columns && y < rows;
                    near[(dy + reach) * side + dx + reach] = isIn ? dots[y * columns + x]! : 0;
                }
            }
            const grey = greys[row * columns + column]!;
            const bin = Math.min(bins - 1, Math.floor((grey * bins) / 256));
            count[bin]!++;
            asked[bin]! += grey / 255;
            got[bin]! += touched(near);
        }
    }
    const all = count.reduce((sum, each) => sum + each, 0);
    const curve = Array.from(count, (cells, bin) => ({ from: asked[bin]! / cells, to: got[bin]! / cells })).filter(
        // What is white is not dark, though dots at its edge reach into it.
        ({ from }, bin) => from > 0 && count[bin]! > all / 1000,
    );
    return { covered: all === 0 ? 0 : got.reduce((sum, each) => sum + each, 0) / all, curve: [{ from: 0, to: 0 }, ...curve] };
}

const mostCells = 250_000;

/** What part of a cell is within half a width (in cells) of the ways of the dots in and around it; remembers what it has met. */
function coveredBy(width: number): (near: Uint8Array) => number {
    const masks = masksOf(width / 2);
    const known = new Map<number, number>();
    return (near) => {
        let key = 0;
        for (let i = 0; i < near.length; i++) if (near[i] === 1) key += 2 ** i;
        const before = known.get(key);
        if (before !== undefined) return before;
        let covered = 0;
        for (let sample = 0; sample < fine * fine; sample++) {
            if (masks.some((mask, i) => near[i] === 1 && mask[sample] === 1)) covered++;
        }
        known.set(key, covered / (fine * fine));
        return covered / (fine * fine);
    };
}

/** For each neighbour which samples of the middle cell its dot reaches, in cells: its way runs through the middle of the cell. */
function masksOf(radius: number): Uint8Array[] {
    return Array.from({ length: side * side }, (_, i) => {
        const left = (i % side) - reach;
        const level = Math.floor(i / side) - reach + 0.5;
        return Uint8Array.from({ length: fine * fine }, (_, sample) => {
            const x = ((sample % fine) + 0.5) / fine;
            const y = (Math.floor(sample / fine) + 0.5) / fine;
            const aside = Math.max(left - x, x - left - 1, 0);
            return Math.hypot(aside, y - level) <= radius ? 1 : 0;
        });
    });
}
