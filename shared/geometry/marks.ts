import { subtract, union } from './boolean';
import { centroid } from './measure';
import { grow } from './offset';
import type { Region } from './region';
import { circle } from './shapes';
import { simplify } from './simplify';
import { roundOrder } from './symmetry';

export interface Point {
    readonly x: number;
    readonly y: number;
}

export interface Marks {
    readonly region: Region;
    readonly points: readonly Point[];
    /**
     * How far, in mm, the marks are from any symmetry: whatever turn or mirroring is tried, at
     * least one mark ends up this far from all others. Zero for fewer than three round marks.
     */
    readonly asymmetry: number;
}

/** How the art between the marks repeats: into how many equal turns about its middle (`roundOrder` if any will do). */
export interface Turning {
    readonly middle: Point;
    readonly turns: number;
}

/** Directions from the middle in which a mark may stand. */
const directions = 120;

/**
 * Round marks, in the free band between art and boundary, by which two halves find each other in
 * one way only: set around the art at unequal angles, and so that no turn under which the art looks the same
 * brings them onto each other. Diameter and the least distance from art and boundary in mm. Fewer marks than
 * asked for, or none, if there is no room.
 */
export function registrationMarks(
    art: Region,
    boundary: Region,
    count: number,
    diameter: number,
    distance: number,
    turning?: Turning,
): Marks {
    const none: Marks = { region: { rings: [] }, points: [], asymmetry: 0 };
    const wanted = Math.min(Math.floor(count), mostMarks);
    if (!(wanted >= 1 && diameter > 0 && distance >= 0) || !Number.isFinite(diameter + distance)) return none;
    const apart = distance + diameter / 2;
    const coarse = apart / 50;
    const room = subtract(grow(simplify(boundary, coarse), -apart - coarse), grow(simplify(art, coarse), apart + coarse));
    const middle = centroid(art) ?? centroid(boundary);
    if (middle === undefined) return none;
    const stands = Array.from({ length: directions }, (_, k) => standIn(room, middle, (2 * Math.PI * k) / directions));
    let best: readonly Point[] = [];
    let score = -1;
    for (let first = 0; first < directions; first++) {
        const points = choose(stands, first, wanted, 2 * diameter);
        const apartBy = points.length < 3 ? Number.POSITIVE_INFINITY : asymmetryOf(points);
        const found = points.length + Math.min(0.999, Math.min(apartBy, apartWhenTurned(points, turning)) / 1000);
        if (found <= score) continue;
        score = found;
        best = points;
    }
    return { region: union(best.map(({ x, y }) => circle(x, y, diameter))), points: best, asymmetry: asymmetryOf(best) };
}

const mostMarks = 12;

/** Takes points at unequal angles from a first one on; in a direction without room, the next one that has it. */
function choose(stands: readonly (Point | undefined)[], first: number, count: number, apart: number): Point[] {
    const points: Point[] = [];
    const weights = Array.from({ length: count }, (_, k) => 1 + 0.5 * ((k * 0.618_034) % 1));
    const whole = weights.reduce((sum, weight) => sum + weight, 0);
    let gone = 0;
    for (const weight of weights) {
        const direction = first + Math.round((gone / whole) * directions);
        gone += weight;
        for (let k = 0; k < directions / count; k++) {
            const stand = stands[(direction + k) % directions];
            if (stand === undefined || points.some(({ x, y }) => Math.hypot(x - stand.x, y - stand.y) < apart)) continue;
            points.push(stand);
            break;
        }
    }
    return points;
}

/** The middle of the outermost stretch of room along a ray from a point; undefined if there is none. */
function standIn(room: Region, { x, y }: Point, angle: number): Point | undefined {
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const crossings: number[] = [];
    for (const ring of room.rings) {
        const size = ring.length;
        for (let i = 0; i < size; i += 2) {
            const j = i + 2 < size ? i + 2 : 0;
            const ax = ring[i]! - x;
            const ay = ring[i + 1]! - y;
            const bx = ring[j]! - x;
            const by = ring[j + 1]! - y;
            // How far the ends are to the left of the ray's line, and along it where that changes sign.
            const left = ay * cos - ax * sin;
            const right = by * cos - bx * sin;
            if (left > 0 === right > 0) continue;
            const t = left / (left - right);
            const along = (ax + t * (bx - ax)) * cos + (ay + t * (by - ay)) * sin;
            if (along > 0) crossings.push(along);
        }
    }
    if (crossings.length === 0) return undefined;
    crossings.sort((a, b) => a - b);
    const outer = crossings.at(-1)!;
    const inner = crossings.at(-2) ?? 0;
    return { x: x + cos * ((outer + inner) / 2), y: y + sin * ((outer + inner) / 2) };
}

/**
 * How far the marks are, in mm, from lying on each other when the art is turned so that it looks the same: less
 * than a mark's width, and they do not tell which turn is right. Endless where no turn could be mistaken.
 */
export function apartWhenTurned(points: readonly Point[], turning: Turning | undefined): number {
    if (turning === undefined || turning.turns < 2 || points.length === 0) return Number.POSITIVE_INFINITY;
    const { middle, turns } = turning;
    const around = points.map(({ x, y }) => ({
        angle: Math.atan2(y - middle.y, x - middle.x),
        radius: Math.hypot(x - middle.x, y - middle.y),
    }));
    const first = around.reduce((a, b) => (b.radius > a.radius ? b : a));
    // Of round art only those turns can be mistaken that bring one mark to where another is.
    const angles =
        turns >= roundOrder
            ? around.flatMap((other) => (other === first ? [] : [other.angle - first.angle]))
            : Array.from({ length: turns - 1 }, (_, k) => (2 * Math.PI * (k + 1)) / turns);
    return Math.min(
        Number.POSITIVE_INFINITY,
        ...angles.map((turn) =>
            Math.max(
                ...around.map(({ angle, radius }) => {
                    const x = middle.x + radius * Math.cos(angle + turn);
                    const y = middle.y + radius * Math.sin(angle + turn);
                    return Math.min(...points.map((point) => Math.hypot(x - point.x, y - point.y)));
                }),
            ),
        ),
    );
}

/**
 * How far points are from any symmetry, in mm. A turn or mirroring that brings a set of points onto
 * itself leaves its mean where it is and takes the first point to one of them; so all of them are tried.
 */
export function asymmetryOf(points: readonly Point[]): number {
    if (points.length < 3) return 0;
    const meanX = points.reduce((sum, point) => sum + point.x, 0) / points.length;
    const meanY = points.reduce((sum, point) => sum + point.y, 0) / points.length;
    const around = points.map(({ x, y }) => ({
        angle: Math.atan2(y - meanY, x - meanX),
        radius: Math.hypot(x - meanX, y - meanY),
    }));
    const first = around.reduce((a, b) => (b.radius > a.radius ? b : a));
    let least = Number.POSITIVE_INFINITY;
    for (const target of around) {
        for (const mirrored of [false, true]) {
            if (target === first && !mirrored) continue;
            const images = around.map(({ angle, radius }) => {
                const turned = mirrored ? target.angle + first.angle - angle : target.angle - first.angle + angle;
                return { x: meanX + radius * Math.cos(turned), y: meanY + radius * Math.sin(turned) };
            });
            const off = images.map((image) => Math.min(...points.map(({ x, y }) => Math.hypot(x - image.x, y - image.y))));
            least = Math.min(least, Math.max(...off));
        }
    }
    return least;
}
