import { type CutPiece, type LaidPiece, layOn } from './sheet-yield';

/** A piece that is left over, mm. */
export interface Offcut {
    readonly width: number;
    readonly height: number;
    /** The side along which its grain runs; the longer one where nothing is said. */
    readonly grain?: 'width' | 'height';
}

export interface OffcutYield {
    readonly laid: readonly LaidPiece[];
    /** What has still to be cut elsewhere. */
    readonly left: readonly CutPiece[];
}

/** More copies of one blank than this are not tried on one offcut. */
const mostTried = 40;

/**
 * As many of the blanks as one offcut holds, by area; none where none fits.
 *
 * @param cut width of a cut between two blanks, mm
 */
export function offcutYield(offcut: Offcut, pieces: readonly CutPiece[], cut: number): OffcutYield {
    const { width, height } = offcut;
    const tried = pieces
        .filter((piece) => piece.count >= 1 && piece.width > 0 && piece.height > 0)
        .map((piece) => {
            const room = Math.floor((width * height) / (piece.width * piece.height));
            return { ...piece, count: Math.min(Math.ceil(piece.count), room, mostTried) };
        })
        .filter(({ count }) => count > 0);
    const layouts = layOn({ width, height }, tried, cut, offcut.grain);
    const laid = layouts.reduce<readonly LaidPiece[]>((best, each) => (areaOf(each) > areaOf(best) ? each : best), []);
    const taken = new Map<string, number>();
    for (const { name } of laid) taken.set(name, (taken.get(name) ?? 0) + 1);
    const left = pieces.map((piece) => {
        const many = Math.min(taken.get(piece.name) ?? 0, Math.ceil(piece.count));
        taken.set(piece.name, (taken.get(piece.name) ?? 0) - many);
        return many === 0 ? piece : { ...piece, count: Math.ceil(piece.count) - many };
    });
    return { laid, left: left.filter(({ count }) => count > 0) };
}

function areaOf(laid: readonly LaidPiece[]): number {
    return laid.reduce((sum, { width, height }) => sum + width * height, 0);
}
