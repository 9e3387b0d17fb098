import { normalCumulative, normalQuantile } from './distributions';
import { depthOf, type LawNumbers, passesWorth } from './dose';
import { type LinePasses, laterWorth } from './outline-pass';

/** What the beam's width makes of a straight edge and of narrow places. Lengths in mm. */
export interface Wall {
    /** Depth of a wide area. */
    readonly depth: number;
    /** How far the rim lies outside of the painted edge; negative if inside. */
    readonly growth: number;
    /** Lean of the wall against the upright (rad), between a tenth and nine tenths of the depth. */
    readonly taper: number;
    /** Narrowest painted slot whose bottom reaches half of the depth. */
    readonly slot: number;
    /** Narrowest unpainted rib whose top loses less than a tenth of the depth. */
    readonly rib: number;
    readonly profile: WallProfile;
}

/** The wall of a straight edge: as much of `depth` is dug as the dose there exceeds `rim`, a part of a wide area's. Lengths in mm. */
export interface WallProfile {
    readonly depth: number;
    readonly rim: number;
    readonly sigma: number;
    /** A line burnt along the edge: its dose as a part of a wide area's, and how much its passes count beside the area's. */
    readonly line?: { readonly peak: number; readonly gain: number };
    /** Tangent by which it leans below `DEEP` beyond that; absent of a wall that is less deep. */
    readonly deep?: number;
}

/** Down to here a wall is as wide as the beam makes it, mm; how it goes on below, measured walls tell (deep-wall.ts). @commonPractice */
export const DEEP = 1.5;

const OPEN = 0.5;
const LOST = 0.1;
/** Without a threshold a wall runs out to nothing; it is cut off where this part of the dose is left. */
const NEAREST_RIM = 0.01;
/** A floor rises to its wall without end; what lies no higher than this above it counts as floor, mm. */
export const FOOT = 0.005;

/** How far inside of the rim a wall lies at a depth below the face, mm; below its floor as far as at its foot. */
export function wallInset(profile: WallProfile, at: number): number {
    return wallShape(profile)(at);
}

/** The same for who asks it of many depths: what the rim takes is worked out once. */
export function wallShape(profile: WallProfile): (at: number) => number {
    const { deep = 0, ...ofBeam } = profile;
    const inset = beamShape(ofBeam);
    if (deep === 0) return inset;
    return (at) => Math.max(0, inset(at) + deep * belowDeep(Math.min(at, profile.depth)));
}

function belowDeep(at: number): number {
    return Math.max(0, at - DEEP);
}

function beamShape(profile: WallProfile): (at: number) => number {
    const { depth, rim, sigma, line } = profile;
    const partAt = (at: number): number => Math.max(0, Math.min(at, depth - FOOT)) / depth;
    if (line !== undefined) {
        const mouth = rimOf(profile);
        return (at) => sigma * Math.max(0, reaching(profile, partAt(at)) - mouth);
    }
    const least = Math.max(rim, NEAREST_RIM);
    const mouth = normalQuantile(least);
    return (at) => Math.max(0, sigma * (normalQuantile(Math.max(least, rim + partAt(at) * (1 - rim))) - mouth));
}

/** In the sums with a line: where they end (sigmas inside of the edge), and their steps. */
const END = 6;
const STEP = 0.02;

type Shape = Pick<WallProfile, 'rim' | 'line'>;

/** Where a wall begins, in sigmas inside of the edge. */
function rimOf({ rim, line }: Shape): number {
    const least = rim > 0 ? rim : NEAREST_RIM;
    const ofArea = normalQuantile(least);
    return line === undefined || line.peak <= least ? ofArea : Math.min(ofArea, -Math.sqrt(2 * Math.log(line.peak / least)));
}

/** The outermost place at which a part of the depth is reached, in sigmas inside of the edge. */
function reaching(shape: Shape, part: number): number {
    const { rim, line } = shape;
    if (line === undefined) return normalQuantile(rim + part * (1 - rim));
    const start = rimOf(shape);
    for (let x = start; x < END; x += STEP) if (partAt(shape, x) >= part) return x;
    return END;
}

function partAt({ rim, line }: Shape, x: number): number {
    return (
        overRim(normalCumulative(x), rim) +
        (line === undefined ? 0 : line.gain * overRim(line.peak * Math.exp((-x * x) / 2), rim))
    );
}

function overRim(share: number, rim: number): number {
    return Math.max(0, share - rim) / (1 - rim);
}

/** Between two edges that lie `width` sigmas apart, in the middle: what their two lines add. */
function ofBothLines({ rim, line }: Shape, width: number): number {
    return line === undefined ? 0 : 2 * line.gain * overRim(line.peak * Math.exp(-(width * width) / 8), rim);
}

/** The widest width (sigmas) at which something is still so that stops with width. */
function widest(isSo: (width: number) => boolean): number {
    for (let width = 2 * END; width > 0; width -= STEP) if (isSo(width)) return width;
    return 0;
}

/**
 * The wall of an area burnt with a dose (J/mm2) by a beam of standard deviation `sigma`. Across a straight
 * edge the dose is F·Φ(x/σ), over a slot of width b it is F·(2Φ(b/2σ) − 1) in the middle, over a rib
 * F·2(1 − Φ(b/2σ)); the depth law does the rest (own derivation). Passes deepen all places alike.
 * A line burnt along the edge after it adds what its own dose D·exp(−x²/2σ²) takes off. Undefined where nothing is taken off.
 * @param deep by how much it leans below `DEEP` beyond that (tangent)
 */
export function wallOf(
    law: LawNumbers,
    dose: number,
    sigma: number,
    passes: number,
    along?: LinePasses,
    deep = 0,
): Wall | undefined {
    const depth = depthOf(law, dose, passes);
    if (!(depth > 0 && sigma > 0) || !Number.isFinite(depth)) return undefined;
    const rim = law.threshold / dose;
    const line =
        along === undefined
            ? undefined
            : { peak: along.dose / dose, gain: laterWorth(law, passes, along.passes) / passesWorth(law, passes) };
    const shape: Shape = { rim, ...(line === undefined ? {} : { line }) };
    /** Part of the dose that gives a part of the depth. */
    const partFor = (part: number): number => rim + part * (1 - rim);
    const added = deep * (belowDeep(0.9 * depth) - belowDeep(0.1 * depth));
    const taper = Math.atan2(sigma * (reaching(shape, 0.9) - reaching(shape, 0.1)) + added, 0.8 * depth);
    return {
        depth,
        growth: -sigma * rimOf(shape),
        taper,
        slot:
            line === undefined
                ? 2 * sigma * normalQuantile((1 + partFor(OPEN)) / 2)
                : sigma * widest((width) => overRim(2 * normalCumulative(width / 2) - 1, rim) + ofBothLines(shape, width) < OPEN),
        rib:
            line === undefined
                ? 2 * sigma * normalQuantile(1 - partFor(LOST) / 2)
                : sigma * widest((width) => overRim(2 * normalCumulative(-width / 2), rim) + ofBothLines(shape, width) >= LOST),
        profile: { depth, ...shape, sigma, ...(deep !== 0 && depth > DEEP && { deep }) },
    };
}
