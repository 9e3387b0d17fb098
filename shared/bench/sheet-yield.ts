import { packer } from 'guillotine-packer/dist/lib/guillotine-packer.js';

/** Blanks of one kind to be cut out of sheets; mm. */
export interface CutPiece {
    readonly name: string;
    readonly width: number;
    readonly height: number;
    readonly count: number;
    /** The side along which its grain runs; such a piece is never laid across the sheet's grain. */
    readonly grain?: 'width' | 'height';
}

/** A blank on a sheet, from the sheet's top left corner; mm as it lies. */
export interface LaidPiece {
    readonly name: string;
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
}

export interface SheetYield {
    /** Sheets to buy. */
    readonly sheets: number;
    /** Part of the sheets' area that ends up in blanks. */
    readonly used: number;
    /** Cuts go from edge to edge, as a saw or a knife along a ruler makes them. */
    readonly layout: readonly (readonly LaidPiece[])[];
    /** So many that only a share of them was laid out, and `sheets` is that share scaled up. */
    readonly scaled: boolean;
    /** Names of blanks that do not fit the sheet at all; they are not counted. */
    readonly tooLarge: readonly string[];
}

/** Width that a cut takes, mm: a table saw's blade, and a knife that leaves room to trim. @commonPractice */
export const cutWidth = { board: 3, veneer: 1 } as const;

const usuallyLaid = 60;

/**
 * How many sheets the blanks need. A sheet's grain is taken to run along its longer side, as boards
 * and veneers are sold. Undefined for a sheet that has no size.
 *
 * @commonPractice Which way the grain of a sheet runs.
 * @param cut width of a cut between two blanks, mm
 * @param mostLaid more pieces are not laid out one by one: it is the same pattern over and over
 */
export function sheetYield(
    sheet: { readonly width: number; readonly height: number },
    pieces: readonly CutPiece[],
    cut: number,
    mostLaid = usuallyLaid,
): SheetYield | undefined {
    if (!(isLength(sheet.width) && isLength(sheet.height) && cut >= 0 && cut < 1e6)) return undefined;
    const laid = alongGrain(sheet, pieces);
    const fitting = fittingOn(sheet, laid);
    const tooLarge = laid.filter((piece) => !fitting.includes(piece)).map((piece) => piece.name);
    const total = fitting.reduce((sum, piece) => sum + Math.ceil(piece.count), 0);
    if (total === 0) return { sheets: 0, used: 0, layout: [], scaled: false, tooLarge };
    const share = Math.max(1, total / mostLaid);
    const layout = leastSheets(sheet, fitting, share, cut);
    const sheets = share === 1 ? layout.length : scaledUp(layout, total);
    const area = fitting.reduce((sum, piece) => sum + piece.width * piece.height * Math.ceil(piece.count), 0);
    return { sheets, used: area / (sheets * sheet.width * sheet.height), layout, scaled: share > 1, tooLarge };
}

/** Layouts of those pieces that fit, each at least once. @param grain the side along which the sheet's grain runs: the longer one */
export function layOn(
    sheet: { readonly width: number; readonly height: number },
    pieces: readonly CutPiece[],
    cut: number,
    grain?: 'width' | 'height',
): LaidPiece[][] {
    const fitting = fittingOn(sheet, alongGrain(sheet, pieces, grain));
    return fitting.length === 0 ? [] : leastSheets(sheet, fitting, 1, cut);
}

function alongGrain(
    sheet: { width: number; height: number },
    pieces: readonly CutPiece[],
    grain: 'width' | 'height' = sheet.width >= sheet.height ? 'width' : 'height',
): CutPiece[] {
    const good = pieces.filter((piece) => isLength(piece.width) && isLength(piece.height) && piece.count >= 1);
    return good.map((piece) => (piece.grain !== undefined && piece.grain !== grain ? turned(piece) : piece));
}

function fittingOn(sheet: { width: number; height: number }, pieces: readonly CutPiece[]): CutPiece[] {
    return pieces.filter((piece) => fits(sheet, piece) || (piece.grain === undefined && fits(sheet, turned(piece))));
}

function isLength(value: number): boolean {
    return value > 0 && value < 1e6;
}

function fits(sheet: { width: number; height: number }, piece: CutPiece): boolean {
    return piece.width <= sheet.width && piece.height <= sheet.height;
}

function turned(piece: CutPiece): CutPiece {
    return { ...piece, width: piece.height, height: piece.width };
}

/** The best of the ways in which the pieces without grain may lie. */
function leastSheets(
    sheet: { width: number; height: number },
    pieces: readonly CutPiece[],
    share: number,
    cut: number,
): LaidPiece[][] {
    const free = pieces.filter((piece) => piece.grain === undefined);
    const ways =
        free.length === pieces.length
            ? [{ pieces, turning: true }]
            : [pieces, pieces.map((piece) => (piece.grain === undefined ? turned(piece) : piece))]
                  .filter((way) => way.every((piece) => fits(sheet, piece)))
                  .map((way) => ({ pieces: way, turning: false }));
    const tried = ways.map((way) => lay(sheet, way.pieces, share, cut, way.turning));
    return tried.reduce((best, other) => (other.length < best.length ? other : best));
}

function lay(
    sheet: { width: number; height: number },
    pieces: readonly CutPiece[],
    share: number,
    cut: number,
    turning: boolean,
): LaidPiece[][] {
    const items = pieces.flatMap(({ width, height, count }, piece) =>
        Array.from({ length: Math.max(1, Math.round(Math.ceil(count) / share)) }, () => ({ width, height, piece })),
    );
    const packed = packer({ binWidth: sheet.width, binHeight: sheet.height, items }, { kerfSize: cut, allowRotation: turning });
    return (packed ?? []).map((bin) =>
        bin.map(({ item, x, y, width, height }) => ({
            name: pieces[(item as { piece: number }).piece]!.name,
            x,
            y,
            width,
            height,
        })),
    );
}

/** The last sheet of a layout is only begun; the ones before it tell how much a sheet holds. */
function scaledUp(layout: readonly (readonly LaidPiece[])[], total: number): number {
    const full = layout.length > 1 ? layout.slice(0, -1) : layout;
    const each = full.reduce((sum, sheet) => sum + sheet.length, 0) / full.length;
    return Math.ceil(total / each);
}
