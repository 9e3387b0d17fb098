import { type PressFit, pressFit } from '../bench/press-fit';
import { inlayStack } from '../bench/stack';
import { intersect, subtract, union } from '../geometry/boolean';
import { bounds } from '../geometry/measure';
import { grow } from '../geometry/offset';
import type { Region } from '../geometry/region';
import { rectangle } from '../geometry/shapes';
import { symmetryOf } from '../geometry/symmetry';
import { mirror, translate } from '../geometry/transform';
import { exactly, type Interval, intervalOf } from '../quantity/interval';
import type { Inlay } from '../recipe/step';
import { halfWall, openingWall } from './cut-half';
import type { LaserPlan } from './laser-plan';
import type { Memo } from './memo';
import type { InlayPlan } from './plan';
import type { VeneerHalf } from './veneer-half';

/** Film a glue leaves when the stock does not say: inside the 0.076 to 0.152 mm a wood glue joint is best at (Wood Handbook ch. 10, from memory). */
const usualFilm: Interval = { value: 0.1, low: 0.075, high: 0.15 };

export interface Halves {
    readonly relief: LaserPlan;
    readonly pocket: LaserPlan;
    /** What the relief's blank is there. */
    readonly half: VeneerHalf;
    readonly below: Interval;
    readonly memo: Memo;
}

/** Brings both halves of an inlay together: turned over, laid on, and stacked up. */
export function planInlay(step: Inlay, halves: Halves): InlayPlan {
    const { relief, pocket, memo } = halves;
    const meet = layOver(relief, pocket, memo);
    // Judged on the art as it is drawn: moving its edges in or out changes no symmetry, but it comes with every depth typed.
    const drawn = pocket.placed.map((placed) => placed.region);
    const symmetry = memo.get('symmetry', drawn.map((region) => memo.keyOf(region)).join(' '), () => {
        const found = symmetryOf(drawn.length === 1 ? drawn[0]! : union(drawn));
        return { mirror: found.mirror.symmetric, mirrorResidual: found.mirror.residual, turns: found.rotation.order };
    });
    return {
        relief: relief.step,
        pocket: pocket.step,
        turnedOver: isTurnedOver(relief, pocket),
        reliefLaser: relief,
        pocketLaser: pocket,
        ...meet,
        ...stackAndFit(step, halves),
        symmetry,
    };
}

/**
 * What follows from the figures of an inlay alone, whatever is drawn: how it stacks up, and how it goes in.
 * @param depth from the face down to the floor that carries it, mm
 */
export function stackAndFit(
    step: Inlay,
    { relief, pocket, half, below, memo }: Halves,
    depth = pocket.depth,
): Pick<InlayPlan, 'clearance' | 'gap' | 'film' | 'below' | 'half' | 'veneer' | 'stack' | 'fit' | 'fitIfWide'> {
    const clearance = Math.max(0, step.clearance?.value ?? 0);
    const gap = clearance + gapOf(relief, 'half') + gapOf(pocket, 'pocket');
    const film = filmOf(step, pocket);
    const { veneer, rise } = half;
    const faceUp = !isTurnedOver(relief, pocket);
    const isDeep = pocket.deepWall !== undefined || relief.deepWall !== undefined;
    const seated = depth === undefined || pocket.step.kind === 'engrave' ? depth : flushIn(depth, veneer);
    const fitAt = (down: Interval, pocket: LaserPlan, relief: LaserPlan): PressFit => {
        const seat = seatOf(pocket, down.value - film.value, veneer);
        const thickness = veneer?.value;
        const key = [gap, seat, below.value, thickness, rise?.value, wallKey(pocket), wallKey(relief), faceUp].join(' ');
        // Tried out with many figures, of which most leave it as it is.
        return memo.get('press-fit', key, () =>
            pressFit(
                gap,
                { seat, sanded: below.value, ...(thickness === undefined ? {} : { thickness }) },
                { pocket: openingWall(pocket), veneer: halfWall(relief, half, faceUp) },
            ),
        );
    };
    return {
        clearance,
        gap,
        film,
        below,
        half,
        ...(veneer === undefined ? {} : { veneer }),
        ...(seated === undefined || veneer === undefined ? {} : { stack: inlayStack(veneer, seated, film, below, rise) }),
        ...(depth === undefined ? {} : { fit: fitAt(depth, pocket, relief) }),
        ...(depth === undefined || !isDeep ? {} : { fitIfWide: fitAt(depth, atWidest(pocket), atWidest(relief)) }),
    };
}

/** Parts that burn veneer away go in face down, whatever is mirrored: their art has to be. Those cut out may lie either way up. */
export function isTurnedOver(relief: LaserPlan, pocket: LaserPlan): boolean {
    const isOdd = ({ step }: LaserPlan): boolean => step.mirror.length % 2 === 1;
    return relief.step.kind === 'engrave' || isOdd(relief) !== isOdd(pocket);
}

/** The same half with its walls as wide as they may be. */
function atWidest(half: LaserPlan): LaserPlan {
    const { wall, deepWall } = half;
    return wall === undefined || deepWall === undefined ? half : { ...half, wall: { ...wall, deep: deepWall.lean.high } };
}

/** Nothing lies under a part in an opening: what glues it is on its edge. */
function filmOf({ glue }: Inlay, pocket: LaserPlan): Interval {
    if (glue === undefined || pocket.step.kind === 'cut') return exactly(0);
    return glue.film === undefined ? usualFilm : intervalOf(glue.film);
}

/** In an opening a part lies on what the board lies on, or, where it is thinner, is held level with the face. */
function flushIn(depth: Interval, part: Interval | undefined): Interval {
    return part !== undefined && part.value < depth.value ? part : depth;
}

/** What a half adds to the gap beside the clearance: its offset, and the kerf where its beam follows the line itself; mm. */
function gapOf({ step, kerf, cutLine }: LaserPlan, side: 'half' | 'pocket'): number {
    const offset = step.offset?.value ?? 0;
    if (step.kind === 'engrave') return offset;
    const beyond = cutLine === undefined && step.kerfOff !== undefined ? (kerf?.face.value ?? 0) / 2 : 0;
    return beyond + (side === 'pocket' ? offset : -offset);
}

/** Where the pocket has no floor, the veneer is pushed in until it is flush; mm. */
function seatOf({ through }: LaserPlan, seat: number, veneer: Interval | undefined): number {
    return through && veneer !== undefined ? Math.min(seat, veneer.value) : seat;
}

function wallKey({ wall, step, kerf, depth: thickness, fits }: LaserPlan): string {
    if (step.kind === 'cut') return ['cut', kerf?.face.value, kerf?.back.value, thickness?.value, fits].join(' ');
    if (wall === undefined) return 'upright';
    const { depth, rim, sigma, line, deep } = wall;
    return [depth, rim, sigma, line?.peak, line?.gain, deep].join(' ');
}

/** Two offsets of the same curve come out the same to within this, mm. */
const hair = 0.01;

type Meeting = Pick<InlayPlan, 'standing' | 'turned' | 'fits' | 'collides' | 'empty'>;

/**
 * The relief is turned over about the upright through the middle of its art and laid with that
 * middle onto the middle of the pocket's art: where the maker would push it to, if it fits.
 */
function layOver(relief: LaserPlan, pocket: LaserPlan, memo: Memo): Meeting {
    // Remembered apart: whoever types at the pocket changes nothing of the relief.
    const standing = memo.get('standing', keyOfRelief(relief, memo), () => standingOf(relief));
    const turned = laidOver(standing, relief, pocket, memo);
    return memo.get('meeting', `${memo.keyOf(turned)} ${memo.keyOf(pocket.region)}`, () => ({
        standing,
        turned,
        fits: intersect(turned, pocket.region),
        collides: subtract(turned, pocket.region),
        empty: subtract(pocket.region, turned),
    }));
}

/** A place of a half as it comes to lie on the pocket's blank: turned over, or moved alone where it goes in face up. */
export function onPocket(region: Region, { reliefLaser, pocketLaser }: InlayPlan, memo: Memo): Region {
    return laidOver(region, reliefLaser, pocketLaser, memo);
}

function laidOver(region: Region, relief: LaserPlan, pocket: LaserPlan, memo: Memo): Region {
    const { axis, x, y } = turningOf(relief, pocket);
    const over = isTurnedOver(relief, pocket);
    return memo.get('turned', `${memo.keyOf(region)} ${over ? axis : 'face up'} ${x} ${y}`, () =>
        translate(over ? mirror(region, axis) : region, x, y),
    );
}

/** How the relief's blank comes to lie on the pocket's: mirrored about an upright, then moved; mm. */
export function turningOf(relief: LaserPlan, pocket: LaserPlan): { axis: number; x: number; y: number } {
    const from = middle(relief);
    const to = middle(pocket);
    return { axis: from.x, x: to.x - from.x, y: to.y - from.y };
}

/** The boundaries within which a half's art is turned inside out, as they lie under the laser. */
export function boundariesOf(laser: LaserPlan, memo: Memo): Region[] {
    const boundaries = laser.placed.flatMap((placed) => placed.boundary ?? []);
    const axis = laser.mirrorAxis;
    return axis === undefined
        ? boundaries
        : boundaries.map((boundary) => memo.get('mirrored', `${memo.keyOf(boundary)} ${axis}`, () => mirror(boundary, axis)));
}

/**
 * What the laser leaves of the veneer on its backing. With an inverse that is all inside the
 * boundary which was not burnt; of a cut, what it encloses; art that was not inverted leaves the sheet around it, of which
 * only the frame within the art's own reach would meet the board.
 */
function standingOf(relief: LaserPlan): Region {
    if (relief.step.kind === 'cut') return relief.region;
    const inverse = relief.placed.filter((placed) => placed.inverse);
    if (inverse.length === 0) return withoutArt(relief);
    const axis = relief.mirrorAxis;
    const drawn = union(inverse.map((placed) => placed.boundary ?? placed.region));
    // Where the burnt edge was moved inwards, it moved inwards at the boundary too: no sliver is left standing along it.
    const boundaries = relief.edge < 0 ? grow(drawn, relief.edge - hair) : drawn;
    return subtract(axis === undefined ? boundaries : mirror(boundaries, axis), relief.region);
}

/** The frame around art that was not inverted, as wide as shows that it is one. */
function withoutArt(relief: LaserPlan): Region {
    const box = bounds(relief.region);
    if (box === undefined || !(box.maxX > box.minX && box.maxY > box.minY)) return { rings: [] };
    const margin = 2;
    const width = box.maxX - box.minX + 2 * margin;
    const height = box.maxY - box.minY + 2 * margin;
    return subtract(rectangle(box.minX - margin, box.minY - margin, width, height), relief.region);
}

/** Middle of the placements, mm: where the art of the half lies on its blank. */
export function middle(half: LaserPlan): { x: number; y: number } {
    const xs = half.placed.map((placed) => placed.centre.x);
    const ys = half.placed.map((placed) => placed.centre.y);
    if (xs.length === 0) return { x: 0, y: 0 };
    return { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
}

function keyOfRelief(relief: LaserPlan, memo: Memo): string {
    const drawn = relief.placed.map(({ inverse, boundary, region }) =>
        inverse ? `inverse ${memo.keyOf(boundary ?? region)}` : 'as drawn',
    );
    return `${relief.step.kind} ${memo.keyOf(relief.region)} ${relief.mirrorAxis ?? ''} ${relief.edge} ${drawn.join(' ')}`;
}
