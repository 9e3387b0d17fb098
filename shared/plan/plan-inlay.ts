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
import type { BlankPlan, InlayPlan } from './plan';

/** Film a glue leaves when the stock does not say: inside the 0.076 to 0.152 mm a wood glue joint is best at (Wood Handbook ch. 10, from memory). */
const usualFilm: Interval = { value: 0.1, low: 0.075, high: 0.15 };

export interface Halves {
    readonly relief: LaserPlan;
    readonly pocket: LaserPlan;
    readonly reliefBlank: BlankPlan | undefined;
    readonly below: Interval;
    readonly memo: Memo;
}

/** Brings both halves of an inlay together: turned over, laid on, and stacked up. */
export function planInlay(step: Inlay, halves: Halves): InlayPlan {
    const { relief, pocket, memo } = halves;
    const meet = meeting(relief, pocket, memo);
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
    { relief, pocket, reliefBlank, below, memo }: Halves,
    depth = pocket.depth,
): Pick<InlayPlan, 'clearance' | 'gap' | 'film' | 'below' | 'veneer' | 'stack' | 'fit'> {
    const clearance = Math.max(0, step.clearance?.value ?? 0);
    const gap = clearance + (relief.step.offset?.value ?? 0) + (pocket.step.offset?.value ?? 0);
    const film = step.glue?.film === undefined ? (step.glue === undefined ? exactly(0) : usualFilm) : intervalOf(step.glue.film);
    const veneer = reliefBlank?.thickness;
    const fitAt = (down: Interval): PressFit => {
        const seat = seatOf(pocket, down.value - film.value, veneer);
        const thickness = veneer?.value;
        const key = [gap, seat, below.value, thickness, wallKey(pocket), wallKey(relief)].join(' ');
        // Tried out with many figures, of which most leave it as it is.
        return memo.get('press-fit', key, () =>
            pressFit(
                gap,
                { seat, sanded: below.value, ...(thickness === undefined ? {} : { thickness }) },
                { pocket: pocketWall(pocket), veneer: veneerWall(relief) },
            ),
        );
    };
    return {
        clearance,
        gap,
        film,
        below,
        ...(veneer === undefined ? {} : { veneer }),
        ...(depth === undefined || veneer === undefined ? {} : { stack: inlayStack(veneer, depth, film, below) }),
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

/** A veneer that is not burnt so deep is still there: no clearance lets that in. */
export function veneerWall({ wall }: LaserPlan): WallShape {
    if (wall === undefined) return () => 0;
    const inset = wallShape(wall);
    return (depth) => (depth > wall.depth + FOOT ? Number.POSITIVE_INFINITY : inset(depth));
}

/** Two offsets of the same curve come out the same to within this, mm. */
const hair = 0.01;

type Meeting = Pick<InlayPlan, 'standing' | 'turned' | 'fits' | 'collides' | 'empty'>;

/**
 * The relief is turned over about the upright through the middle of its art and laid with that
 * middle onto the middle of the pocket's art: where the maker would push it to, if it fits.
 */
function meeting(relief: LaserPlan, pocket: LaserPlan, memo: Memo): Meeting {
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
