import { type PressFit, pressFit, type WallShape } from '../bench/press-fit';
import { inlayStack } from '../bench/stack';
import { FOOT, wallShape } from '../burn/wall';
import { intersect, subtract, union } from '../geometry/boolean';
import { bounds } from '../geometry/measure';
import { grow } from '../geometry/offset';
import type { Region } from '../geometry/region';
import { rectangle } from '../geometry/shapes';
import { symmetryOf } from '../geometry/symmetry';
import { mirror, translate } from '../geometry/transform';
import { exactly, type Interval, intervalOf } from '../quantity/interval';
import type { Engrave, Inlay } from '../recipe/step';
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
        relief: relief.step as Engrave,
        pocket: pocket.step as Engrave,
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
): Pick<InlayPlan, 'clearance' | 'gap' | 'film' | 'below' | 'half' | 'veneer' | 'stack' | 'fit'> {
    const clearance = Math.max(0, step.clearance?.value ?? 0);
    const gap = clearance + (relief.step.offset?.value ?? 0) + (pocket.step.offset?.value ?? 0);
    const film = step.glue?.film === undefined ? (step.glue === undefined ? exactly(0) : usualFilm) : intervalOf(step.glue.film);
    const { veneer, rise } = half;
    const fitAt = (down: Interval): PressFit => {
        const seat = seatOf(pocket, down.value - film.value, veneer);
        const thickness = veneer?.value;
        const key = [gap, seat, below.value, thickness, rise?.value, wallKey(pocket), wallKey(relief)].join(' ');
        // Tried out with many figures, of which most leave it as it is.
        return memo.get('press-fit', key, () =>
            pressFit(
                gap,
                { seat, sanded: below.value, ...(thickness === undefined ? {} : { thickness }) },
                { pocket: pocketWall(pocket), veneer: veneerWall(relief, half) },
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
        ...(depth === undefined || veneer === undefined ? {} : { stack: inlayStack(veneer, depth, film, below, rise) }),
        ...(depth === undefined ? {} : { fit: fitAt(depth) }),
    };
}

/** Where the pocket has no floor, the veneer is pushed in until it is flush; mm. */
function seatOf({ through }: LaserPlan, seat: number, veneer: Interval | undefined): number {
    return through && veneer !== undefined ? Math.min(seat, veneer.value) : seat;
}

function wallKey({ wall }: LaserPlan): string {
    if (wall === undefined) return 'upright';
    const { depth, rim, sigma, line } = wall;
    return [depth, rim, sigma, line?.peak, line?.gain].join(' ');
}

/** Upright where settings or spot are not known. */
function pocketWall({ wall }: LaserPlan): WallShape {
    return wall === undefined ? () => 0 : wallShape(wall);
}

/**
 * What is left around a veneer's parts lies on the board: no clearance lets that in. Where other burns along the same edge have made
 * it deeper, the wall is as much steeper (own reasoning: shares of the dose are the same for all of them).
 */
export function veneerWall({ wall }: LaserPlan, { rise, veneer }: VeneerHalf): WallShape {
    const deep = (rise ?? veneer)?.value ?? 0;
    const inset = wall === undefined ? () => 0 : wallShape({ ...wall, depth: Math.max(wall.depth, deep) });
    const most = rise === undefined ? Number.POSITIVE_INFINITY : rise.value + FOOT;
    return (depth) => (depth > most ? Number.POSITIVE_INFINITY : inset(depth));
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
    const { axis, x, y } = turningOf(relief, pocket);
    const turned = memo.get('turned', `${memo.keyOf(standing)} ${axis} ${x} ${y}`, () => translate(mirror(standing, axis), x, y));
    return memo.get('meeting', `${memo.keyOf(turned)} ${memo.keyOf(pocket.region)}`, () => ({
        standing,
        turned,
        fits: intersect(turned, pocket.region),
        collides: subtract(turned, pocket.region),
        empty: subtract(pocket.region, turned),
    }));
}

/** A place of a veneer half as it comes to lie on the pocket's blank. */
export function turnedOver(region: Region, { reliefLaser, pocketLaser }: InlayPlan, memo: Memo): Region {
    const { axis, x, y } = turningOf(reliefLaser, pocketLaser);
    return memo.get('turned', `${memo.keyOf(region)} ${axis} ${x} ${y}`, () => translate(mirror(region, axis), x, y));
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
 * boundary which was not burnt; art that was not inverted leaves the sheet around it, of which
 * only the frame within the art's own reach would meet the board.
 */
function standingOf(relief: LaserPlan): Region {
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
    return `${memo.keyOf(relief.region)} ${relief.mirrorAxis ?? ''} ${relief.edge} ${drawn.join(' ')}`;
}
