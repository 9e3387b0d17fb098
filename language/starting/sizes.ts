import type { ArtSize } from '../../shared/art/art-size';
import { veneerBlank } from './inlay-steps';
import type { SizeInMm } from './start';

/** mm of wood left around the art, on either side. */
const margin = 20;
/** mm across, where neither art nor maker says how large it is to be. */
const usualWidth = 100;
/** Pixels a millimetre below which a picture shows its squares: a pixel of two usual lines. */
const coarsest = 5;

/** What there is to hold to: sheets as they are bought, the laser's field. */
export interface Room {
    readonly board: SizeInMm | undefined;
    readonly veneer: SizeInMm | undefined;
    readonly field: SizeInMm | undefined;
}

export interface Sizes {
    readonly blank: SizeInMm;
    /** The art as it is burnt. */
    readonly page: SizeInMm;
    /** Whether the art has to be told its size. */
    readonly sized: boolean;
}

/** Sizes of blank and art that fit each other, the sheets and the laser. A blank that was asked for is kept as it is. */
export function sizesOf(art: ArtSize, room: Room, wished: SizeInMm | undefined): Sizes {
    const most = least([room.board, room.field, { width: 600, height: 600 }]);
    const within = wished ?? most;
    const inside = {
        width: within.width - 2 * smaller(margin, within.width),
        height: within.height - 2 * smaller(margin, within.height),
    };
    const half = veneerBlank({ width: 0, height: 0 });
    const laid = least([room.veneer, room.veneer === undefined ? undefined : room.field]);
    const allowed = least([inside, { width: laid.width - half.width, height: laid.height - half.height }]);
    const natural = art.physical ? art.width : Math.min(usualWidth, fineEnough(art));
    const scale = Math.min(natural, allowed.width, (allowed.height * art.width) / art.height) / art.width;
    const sized = !art.physical || scale < 1 - 1e-9;
    const width = sized ? Math.max(1, Math.floor(art.width * scale)) : art.width;
    const page = { width, height: (art.height * width) / art.width };
    const blank = wished ?? {
        width: Math.min(most.width, roundUp(page.width + 2 * margin)),
        height: Math.min(most.height, roundUp(page.height + 2 * margin)),
    };
    return { blank, page, sized };
}

function fineEnough({ columns }: ArtSize): number {
    return columns === undefined ? usualWidth : columns / coarsest;
}

function smaller(wanted: number, side: number): number {
    return Math.min(wanted, side / 8);
}

function least(extents: readonly (SizeInMm | undefined)[]): SizeInMm {
    const known = extents.filter((each) => each !== undefined);
    const of = (side: keyof SizeInMm): number => Math.min(...known.map((extent) => extent[side]));
    return { width: of('width'), height: of('height') };
}

/** To five millimetres, as a board is sawn. */
function roundUp(mm: number): number {
    return Math.ceil(mm / 5 - 1e-9) * 5;
}
