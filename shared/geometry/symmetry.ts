import { exclude } from './boolean';
import { area, centroid, isEmpty, perimeter } from './measure';
import { grow } from './offset';
import { coarser, mirroredDifference, type PolarPicture, polarPicture, turnedDifference } from './polar';
import type { Region } from './region';
import { simplify } from './simplify';
import { type Matrix, rotation, transform } from './transform';

/** How a region compares with its image under one map. */
export interface Match {
    /** Area in mm2 that is in one of the two and not in the other. */
    readonly residual: number;
    /** Whether the two differ nowhere by more than the tolerance. */
    readonly symmetric: boolean;
}

export interface Symmetry {
    /** In mm: differences thinner than this do not count. */
    readonly tolerance: number;
    /** Turned over left to right, about the upright line through the centre of area. */
    readonly mirror: Match;
    /** The best line through the centre of area to turn it over about; `angle` in rad from the x axis, 0 to pi. Looked for when it is asked for. */
    readonly axis: Match & { readonly angle: number };
    /** Into how many equal turns it repeats: 1 if it does not, `roundOrder` if any turn will do. */
    readonly rotation: Match & { readonly order: number };
}

/** The order given to what looks the same under every turn. */
export const roundOrder = 360;

const highestOrder = 64;
/** Maps that are tried exactly, of those that look right in the picture. */
const mostTried = 6;
/** The golden angle as a part of a turn: no number of these comes back to the start. */
const goldenPart = (3 - Math.sqrt(5)) / 2;

const none: Match = { residual: 0, symmetric: false };

/**
 * The symmetries of a region about its centre of area, to `tolerance` mm. Heavy art is first
 * simplified to a tenth of that. Candidates are found in a picture of limited fineness and then
 * decided on the outlines themselves; a residual too large for any symmetry is the picture's own,
 * good to a few per cent.
 */
export function symmetryOf(region: Region, tolerance = 0.1): Symmetry {
    const light = simplify(region, tolerance / 10);
    const centre = centroid(light);
    if (centre === undefined || !(tolerance > 0)) {
        return { tolerance, mirror: none, axis: { ...none, angle: Math.PI / 2 }, rotation: { ...none, order: 1 } };
    }
    const { x, y } = centre;
    const picture = polarPicture(light, x, y);
    // Outlines nowhere farther apart than the tolerance cannot differ by more than a band along them.
    const most = 2 * tolerance * perimeter(light);
    const match = (seen: number, map: Matrix): Match =>
        seen > most ? { residual: seen, symmetric: false } : compare(light, transform(light, map), tolerance);
    const mirrorAt = (axis: number): Match & { angle: number } => {
        const angle = mod((axis * Math.PI) / picture.rays, Math.PI);
        return { angle, ...match(mirroredDifference(picture, Math.round(axis)), reflection(angle, x, y)) };
    };
    const { angle: _, ...mirror } = mirrorAt(picture.rays / 2);
    let axis: Symmetry['axis'] | undefined;
    return {
        tolerance,
        mirror,
        get axis() {
            axis ??= mirror.symmetric ? { angle: Math.PI / 2, ...mirror } : mirrorAt(bestAxis(picture));
            return axis;
        },
        rotation: bestTurn(picture, most, (seen, turn) => match(seen, rotation(turn, x, y))),
    };
}

/** How a region compares with its image in the upright at `x`, to `tolerance` mm. */
export function mirrorMatch(region: Region, x: number, tolerance = 0.1): Match {
    const light = simplify(region, tolerance / 10);
    return compare(light, transform(light, reflection(Math.PI / 2, x, 0)), tolerance);
}

function compare(a: Region, b: Region, tolerance: number): Match {
    const difference = exclude(a, b);
    return { residual: area(difference), symmetric: isEmpty(grow(difference, -tolerance / 2)) };
}

/** The mirroring about the line through (x, y) at an angle in rad. */
export function reflection(angle: number, x: number, y: number): Matrix {
    const cos = Math.cos(2 * angle);
    const sin = Math.sin(2 * angle);
    return { a: cos, b: sin, c: sin, d: -cos, e: x - cos * x - sin * y, f: y - sin * x + cos * y };
}

/** The axis, in half rays, about which the picture differs least from its mirror image. */
function bestAxis(picture: PolarPicture): number {
    const parts = 7;
    const coarse = picture.rays % parts === 0 && picture.rays > 2000 ? coarser(picture, parts) : picture;
    let best = leastAxis(coarse, 0, coarse.rays);
    if (coarse !== picture) best = leastAxis(picture, (best - 1) * parts, 2 * parts + 1);
    return best + betweenRays(picture, best);
}

function leastAxis(picture: PolarPicture, from: number, count: number): number {
    let best = from;
    let least = Number.POSITIVE_INFINITY;
    for (let axis = from; axis < from + count; axis++) {
        const difference = mirroredDifference(picture, axis, least);
        if (difference >= least) continue;
        least = difference;
        best = axis;
    }
    return best;
}

/** Where between an axis and its neighbours the difference, which falls and rises in straight lines, is least. */
function betweenRays(picture: PolarPicture, axis: number): number {
    const [before, here, after] = [axis - 1, axis, axis + 1].map((each) => mirroredDifference(picture, each));
    const tilt = before! - after!;
    const bend = before! + after! - 2 * here!;
    return bend > 0 ? tilt / (Math.abs(tilt) + bend) : 0;
}

function bestTurn(picture: PolarPicture, most: number, match: (seen: number, turn: number) => Match): Match & { order: number } {
    const candidates: { order: number; part: number; seen: number }[] = [];
    let closest = { part: 1 / 2, seen: Number.POSITIVE_INFINITY };
    for (let order = highestOrder; order >= 2; order--) {
        const part = telling(order);
        // Neither a candidate nor the closest beyond that.
        const seen = turnedDifference(picture, Math.round(picture.rays * part), Math.max(closest.seen, most));
        if (seen < closest.seen) closest = { part, seen };
        if (seen <= most) candidates.push({ order, part, seen });
    }
    const tryTurn = ({ part, seen }: { part: number; seen: number }) => match(seen, 2 * Math.PI * part);
    if (candidates.length > highestOrder / 2) {
        const round = tryTurn({ part: goldenPart, seen: turnedDifference(picture, Math.round(picture.rays * goldenPart)) });
        if (round.symmetric) return { ...round, order: roundOrder };
    }
    for (const candidate of candidates.slice(0, mostTried)) {
        const found = tryTurn(candidate);
        if (found.symmetric) return { ...found, order: candidate.order };
    }
    return { residual: closest.seen, symmetric: false, order: 1 };
}

/**
 * Part of a whole turn that generates all turns of an order and is itself large: under a small
 * turn everything looks alike.
 */
function telling(order: number): number {
    let steps = Math.max(1, Math.round(order * goldenPart));
    while (commonDivisor(steps, order) > 1) steps++;
    return steps / order;
}

function commonDivisor(a: number, b: number): number {
    return b === 0 ? a : commonDivisor(b, a % b);
}

function mod(value: number, by: number): number {
    return ((value % by) + by) % by;
}
