import type { Laser } from '../recipe/stock';

/**
 * A focused beam. Lengths in mm, diameters and radii at 1/e2 of the peak.
 *
 * Gaussian optics (Siegman, Lasers, 1986, ch. 17; Saleh & Teich, Fundamentals of Photonics, ch. 3):
 * d = 4 M2 λ f / (π D), zR = π w0² / (M2 λ), w(z) = w0 √(1 + (z/zR)²).
 */
export interface Spot {
    readonly diameter: number;
    /** Distance from the focus at which the area of the spot has doubled; absent without a wavelength. */
    readonly rayleigh?: number;
    readonly quality: number;
    /** M2 was neither written nor to be worked out from spot and lens, so a usual value stands in. */
    readonly qualityAssumed: boolean;
    readonly from: 'spot' | 'lens';
}

// Usual beam qualities where none is written: a sealed CO2 tube is near the ideal, a blue diode is multimode. @commonPractice
const usualQuality = (wavelength: number): number => (wavelength > 2e-3 ? 1.2 : wavelength < 0.7e-3 ? 10 : 1.5);

function positive(value: number | undefined): number | undefined {
    return value !== undefined && value > 0 && Number.isFinite(value) ? value : undefined;
}

/** Width of a line where the spot is not known, mm. @commonPractice */
const USUAL_WIDTH = 0.2;

/** How wide a line is that the beam follows, mm: as the spot. */
export function lineWidth(laser: Laser | undefined): number {
    return spotOf(laser)?.diameter ?? USUAL_WIDTH;
}

/** The focused spot of a machine, as written or worked out from its lens; undefined if neither can be had. */
export function spotOf(laser: Laser | undefined): Spot | undefined {
    const wavelength = positive(laser?.wavelength?.value) ?? positive(laser?.beam?.wavelength?.value);
    const lens = positive(laser?.lens?.value);
    const aperture = positive(laser?.aperture?.value);
    const written = positive(laser?.spot?.value);
    const writtenQuality = positive(laser?.quality?.value);
    const ideal = wavelength && lens && aperture ? spotDiameter(wavelength, 1, lens, aperture) : undefined;

    if (written !== undefined) {
        const worked = writtenQuality ?? (ideal === undefined ? undefined : Math.max(1, written / ideal));
        const quality = worked ?? (wavelength === undefined ? 1 : usualQuality(wavelength));
        return spot(written, quality, worked === undefined, 'spot', wavelength);
    }
    if (wavelength === undefined || ideal === undefined) return undefined;
    const quality = writtenQuality ?? usualQuality(wavelength);
    return spot(ideal * quality, quality, writtenQuality === undefined, 'lens', wavelength);
}

function spot(
    diameter: number,
    quality: number,
    qualityAssumed: boolean,
    from: Spot['from'],
    wavelength?: number,
): Spot | undefined {
    if (positive(diameter) === undefined) return undefined;
    const rayleigh = wavelength === undefined ? undefined : positive(rayleighRange(diameter, wavelength, quality));
    return { diameter, ...(rayleigh !== undefined && { rayleigh }), quality, qualityAssumed, from };
}

/** Diameter (mm) of the focus of a lens of focal length `lens` filled by a beam of diameter `aperture`. */
export function spotDiameter(wavelength: number, quality: number, lens: number, aperture: number): number {
    return (4 * quality * wavelength * lens) / (Math.PI * aperture);
}

/** Rayleigh range (mm) of a spot of the given 1/e2 diameter. */
export function rayleighRange(diameter: number, wavelength: number, quality: number): number {
    return (Math.PI * (diameter / 2) ** 2) / (quality * wavelength);
}

/** Diameter of the spot at a distance from its focus. */
export function diameterAt(focus: Spot, distance: number): number {
    return focus.rayleigh === undefined ? focus.diameter : focus.diameter * Math.hypot(1, distance / focus.rayleigh);
}

/** Full depth over which the spot stays within `growth` (0.05: five per cent) of its smallest diameter. */
export function depthOfFocus(focus: Spot, growth: number): number | undefined {
    return focus.rayleigh === undefined || !(growth >= 0) ? undefined : 2 * focus.rayleigh * Math.sqrt((1 + growth) ** 2 - 1);
}

/**
 * How many focus heights a pocket of this depth wants: one for each Rayleigh range begun, so that the
 * floor is never further from the focus than that. 1 when the depth of focus is not known.
 */
export function focusSteps(focus: Spot, depth: number): number {
    if (focus.rayleigh === undefined || !(depth > 0)) return 1;
    return Math.min(MOST_FOCUS_STEPS, Math.max(1, Math.ceil(depth / focus.rayleigh - 1e-9)));
}

const MOST_FOCUS_STEPS = 100;

/**
 * Height of the focus below the face (mm) for each of `passes` equal passes: it follows the floor down,
 * but only in as many steps as the depth needs, since each is a stop of the machine.
 */
export function focusHeights(focus: Spot, depth: number, passes: number): number[] {
    const steps = Math.min(focusSteps(focus, depth), Math.max(1, passes));
    return Array.from({ length: Math.max(0, passes) }, (_, pass) => (Math.floor((pass * steps) / passes) * depth) / steps);
}
