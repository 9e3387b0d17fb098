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
}

const OPEN = 0.5;
const LOST = 0.1;

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
    // Without a threshold the wall runs out to nothing; it is cut off where a hundredth of the depth is left.
    const growth = -across(rim > 0 ? 0 : 0.01);
    const taper = Math.atan2(across(0.9) - across(0.1), 0.8 * depth);
    return {
        depth,
        growth,
        taper,
        slot: 2 * sigma * normalQuantile((1 + partFor(OPEN)) / 2),
        rib: 2 * sigma * normalQuantile(1 - partFor(LOST) / 2),
    };
}
