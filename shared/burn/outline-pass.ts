import { bracket } from '../quantity/bracket';
import { normalCumulative, normalQuantile } from './distributions';
import { bent, depthOf, doseFor, type LawNumbers, passesWorth } from './dose';

/** Passes of the beam along the edge of an area, after the area is burnt. */
export interface LinePasses {
    /** Dose in the middle of the line, of each pass (J/mm2). */
    readonly dose: number;
    readonly passes: number;
}

/** What is burnt at a straight edge: passes over the area, then some along its edge. */
export interface EdgeBurn {
    readonly law: LawNumbers;
    /** Of the area, each pass (J/mm2). */
    readonly dose: number;
    readonly passes: number;
    readonly line?: LinePasses;
}

/** Standard deviations on either side of an edge in which a line is looked at, and the steps in which. */
const REACH = 3;
const STEP = 0.05;
/** No line is stronger, J/mm2: a bent law knows no dose for some depths. */
const STRONGEST = 1e4;
/** So close below the threshold a line may come that must not dig. */
const BELOW_THRESHOLD = 0.95;

/** Energy per length (J/mm) of a line with a dose in its middle: dose · σ · √(2π), the integral of the beam's profile across it. */
export function lineEnergy(dose: number, sigma: number): number {
    return dose * sigma * Math.sqrt(2 * Math.PI);
}

/** The way back of lineEnergy. */
export function lineDose(energy: number, sigma: number): number {
    return energy / (sigma * Math.sqrt(2 * Math.PI));
}

/** How much the passes of a line count that come after those of the area, in first passes. */
export function laterWorth(law: Pick<LawNumbers, 'fade' | 'laterAlike'>, passes: number, linePasses: number): number {
    return passesWorth(law, passes + linePasses) - passesWorth(law, passes);
}

/**
 * Depth (mm) where an area's dose is a share (0 to 1) of its full one, as across its edge: there the share is Φ(x/σ), and a line along
 * the edge gives D·exp(−x²/2σ²), so that the share tells both (own derivation; exact at straight edges).
 */
export function depthAtShare({ law, dose, passes, line }: EdgeBurn, share: number): number {
    const area = depthOf(law, dose * share, passes);
    if (line === undefined || !(share > 0 && share < 1)) return area;
    const over = line.dose * Math.exp(-(normalQuantile(share) ** 2) / 2) - law.threshold;
    return area + bent(law, Math.max(0, over) / law.energy) * laterWorth(law, passes, line.passes);
}

/** The strongest dose of a line along a pocket's edge that is nowhere deeper than its floor (J/mm2, each pass). */
export function doseToFloor({ law, dose, passes }: EdgeBurn, linePasses: number): number {
    const floor = depthOf(law, dose, passes);
    const worth = laterWorth(law, passes, linePasses);
    return largest(Math.min(STRONGEST, doseFor(law, floor / worth, 1)), (middle) =>
        everyShare((share, profile) => {
            const added = worth * bent(law, Math.max(0, middle * profile - law.threshold) / law.energy);
            return depthOf(law, dose * share, passes) + added <= floor * (1 + 1e-6);
        }),
    );
}

/**
 * The dose of a line along a coloured area's edge (J/mm2, each pass) that makes the edge as dark as the area: it makes up for the half
 * that the beam's width loses there, digs nowhere, and no place gets more than the area or the darkest tone does.
 * @param darkest dose of the darkest tone without digging (J/mm2)
 */
export function doseToTone({ law, dose, passes }: EdgeBurn, linePasses: number, darkest: number): number {
    const all = dose * passes;
    const ceiling = Math.max(all, darkest) * (1 + 1e-6);
    const sum = largest(all / 2, (middle) => everyShare((share, profile) => all * share + middle * profile <= ceiling));
    const each = sum / linePasses;
    return law.threshold > 0 ? Math.min(each, Math.max(dose, BELOW_THRESHOLD * law.threshold)) : each;
}

function everyShare(holds: (share: number, profile: number) => boolean): boolean {
    for (let x = -REACH; x <= REACH; x += STEP) if (!holds(normalCumulative(x), Math.exp((-x * x) / 2))) return false;
    return true;
}

/** Largest value up to `most` at which something holds that holds below it. */
function largest(most: number, holds: (value: number) => boolean): number {
    return holds(most) ? most : bracket(0, most, holds).last;
}
