import { normalQuantile } from './distributions';
import { depthOf, type LawNumbers } from './dose';

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
}

const OPEN = 0.5;
const LOST = 0.1;
/** Without a threshold a wall runs out to nothing; it is cut off where this part of the dose is left. */
const NEAREST_RIM = 0.01;
/** A floor rises to its wall without end; what lies no higher than this above it counts as floor, mm. */
export const FOOT = 0.005;

/** How far inside of the rim a wall lies at a depth below the face, mm; below its floor as far as at its foot. */
export function wallInset({ depth, rim, sigma }: WallProfile, at: number): number {
    const part = Math.max(0, Math.min(at, depth - FOOT)) / depth;
    const least = Math.max(rim, NEAREST_RIM);
    return Math.max(0, sigma * (normalQuantile(Math.max(least, rim + part * (1 - rim))) - normalQuantile(least)));
}

/**
 * The wall of an area burnt with a dose (J/mm2) by a beam of standard deviation `sigma`. Across a straight
 * edge the dose is F·Φ(x/σ), over a slot of width b it is F·(2Φ(b/2σ) − 1) in the middle, over a rib
 * F·2(1 − Φ(b/2σ)); the depth law does the rest (own derivation). Passes deepen all places alike.
 * Undefined where nothing is taken off.
 */
export function wallOf(law: LawNumbers, dose: number, sigma: number, passes: number): Wall | undefined {
    const depth = depthOf(law, dose, passes);
    if (!(depth > 0 && sigma > 0) || !Number.isFinite(depth)) return undefined;
    const rim = law.threshold / dose;
    /** Part of the dose that gives a part of the depth. */
    const partFor = (part: number): number => rim + part * (1 - rim);
    const across = (part: number): number => sigma * normalQuantile(partFor(part));
    const growth = -across(rim > 0 ? 0 : NEAREST_RIM);
    const taper = Math.atan2(across(0.9) - across(0.1), 0.8 * depth);
    return {
        depth,
        growth,
        taper,
        slot: 2 * sigma * normalQuantile((1 + partFor(OPEN)) / 2),
        rib: 2 * sigma * normalQuantile(1 - partFor(LOST) / 2),
        profile: { depth, rim, sigma },
    };
}
