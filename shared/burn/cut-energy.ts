import type { Laser, Wood } from '../recipe/stock';
import { diameterAt, type Spot, spotOf } from './beam';
import { reflectionLoss } from './guess';

/** What a cut is made with: W, mm/s, how often; and how thick the sheet is, mm. */
export interface CutSettings {
    readonly power: number;
    readonly speed: number;
    readonly passes: number;
}

/*
 * What it takes to part a sheet before any cut of it was tried. Lengths mm, energies J.
 *
 * The beam takes off a kerf as wide as itself, averaged over the thickness with the focus in its middle, and warms the wood on
 * both sides as far as heat spreads while it passes: 2√(αt) with t = kerf / speed (thermal diffusion length; Carslaw & Jaeger,
 * Conduction of Heat in Solids, ch. 2; from memory). α = 0.15 mm2/s from k 0.15 W/mK, c 1.6 kJ/kgK and 610 kg/m3 (Wood Handbook,
 * FPL-GTR-190, Eq. 4-15 to 4-17). Energy and the loss down a narrow kerf are set so that southern pine comes out as cut by
 * McMillin & Harry (Forest Prod. J. 21(10):35-37, 1971: 240 W with an air jet, 41.95 mm/s through 6.35 mm and 6.181 mm/s through
 * 25.4 mm; kerf 0.381 mm, whose link to that test is an assumption). Energy goes with density; 600 kg/m3 stands for that pine.
 *
 * Where the beam is so wide at face and back that its irradiance falls towards 100 W/mm2 it chars more than it digs: the need
 * grows with the square of what is missing (own estimate from what machines of 10 to 60 W part in practice, no source).
 */
const ENERGY = 1.6; // J/mm3
const REFERENCE_DENSITY = 600e-6; // g/mm3
const DIFFUSIVITY = 0.15; // mm2/s
const DEEPEST = 261; // kerf widths in which the loss has doubled the need
const WEAK = 100; // W/mm2
/** What a pass is worth of the one before: the kerf is narrow, sooty and out of focus by then (own estimate). */
const LATER_PASS = 0.85;
const USUAL_SPOT: Spot = { diameter: 0.2, quality: 1, qualityAssumed: true, from: 'spot' };
const SLICES = 16;

/** Beam and wood of a cut, as far as the need for energy goes by them. */
export interface CutBeam {
    readonly spot: Spot;
    /** Against pine under a CO2 beam. */
    readonly scale: number;
}

export function cutBeam(laser: Laser | undefined, wood: Wood | undefined): CutBeam {
    const written = wood?.density?.value;
    const density =
        written !== undefined && written > 0 && Number.isFinite(written)
            ? Math.min(Math.max(written, 100e-6), 1400e-6)
            : REFERENCE_DENSITY;
    return { spot: spotOf(laser) ?? USUAL_SPOT, scale: (density / REFERENCE_DENSITY) * reflectionLoss(laser) };
}

/** Mean diameter (mm) of the beam over a thickness, with the focus in its middle: about the width of the kerf. */
export function meanKerf(spot: Spot, thickness: number): number {
    let sum = 0;
    for (let i = 0; i < SLICES; i++) sum += diameterAt(spot, ((i + 0.5) / SLICES - 0.5) * thickness);
    return sum / SLICES;
}

/** Log of the energy that settings bring over what a thickness (mm) takes by the estimate: nothing where it is just enough. */
export function cutMargin({ spot, scale }: CutBeam, { power, speed, passes }: CutSettings, thickness: number): number {
    const kerf = meanKerf(spot, thickness);
    const across = kerf + 4 * Math.sqrt((DIFFUSIVITY * kerf) / speed);
    const irradiance = power / ((Math.PI / 4) * diameterAt(spot, thickness / 2) ** 2);
    const loss = (1 + thickness / (DEEPEST * kerf)) * (1 + (WEAK / irradiance) ** 2);
    const needed = ENERGY * scale * thickness * loss * across * speed;
    return Math.log((power * ((1 - LATER_PASS ** passes) / (1 - LATER_PASS))) / needed);
}
