import type { Laser, Wood } from '../recipe/stock';
import { spotOf } from './beam';
import { type DepthLaw, FADE_SPREAD } from './law';

/*
 * What the depth law may be before anything was burnt. Every figure is rough on purpose.
 *
 * Removal energy. Cutting of southern pine with a CO2 beam (McMillin & Harry, Forest Prod. J. 21(10):35-37,
 * 1971: 240 W, 99.1 in/min through 0.25 in., 14.6 in/min through 1.00 in.) with a kerf of 0.381 mm (the kerf's
 * link to that test is an assumption) gives 2.36 and 4.01 J/mm3; their geometric mean is 3.08. A lower
 * bound from heat alone (600 kg/m3 warmed by 330 K at 2 kJ/kg K, 12 % water at 2.6 MJ/kg, 0.3 MJ/kg to char)
 * is 0.76 J/mm3. Energy goes with the mass that has to be taken off, so it is scaled by density; 600 kg/m3
 * stands for that pine (from memory).
 *
 * Threshold. The heat to char a skin about 0.2 mm deep: 600 kg/m3 · 2 kJ/kg K · 330 K · 0.2 mm = 0.08 J/mm2 (own estimate).
 *
 * Irradiance. While the spot passes, heat runs into the wood: a face that is held at a temperature θ for t takes up 2θ·√(kρc·t/π)
 * (conduction into a half-space: Carslaw & Jaeger, Conduction of Heat in Solids, ch. 2; from memory), and this heat digs nothing. With 0.15 W/m K
 * across the grain, 600 kg/m3, 2 kJ/kg K (from memory) and char that glows at 1500 K (own estimate) that is 0.72 J/mm2 for a second, and √t for
 * other times. For a spot of 0.15 mm it is nothing to speak of; a wide or unfocused beam does not dig at the same dose. Held against one
 * series only (Acta Facultatis Xylologiae Zvolen 61(1), 2019, Tab. 1 and 4: beech, 45 W over 10 mm), in which 0.07 to 0.75 J/mm2 char and do not dig.
 *
 * Short waves are partly reflected by bare, pale wood until it chars (own estimate, no source): 1.3 times
 * for blue, 2.5 times for sources near 1 um.
 */
const REFERENCE_DENSITY = 600e-6; // g/mm3
const REMOVAL_ENERGY = 3.08; // J/mm3
const THRESHOLD = 0.08; // J/mm2
const CONDUCTED = 0.72; // J/mm2 in a second, at the reference density
// One standard error as a part of the value: 95 % reach twice the depth and half of it.
const SPREAD = 0.51;
const SPREAD_THRESHOLD = 0.8;

export function guessLaw(wood: Wood | undefined, laser: Laser | undefined): DepthLaw {
    const written = wood?.density?.value;
    const density =
        written !== undefined && written > 0 && Number.isFinite(written)
            ? Math.min(Math.max(written, 100e-6), 1400e-6)
            : REFERENCE_DENSITY;
    const loss = reflectionLoss(laser);
    const scale = (density / REFERENCE_DENSITY) * loss;
    const energy = REMOVAL_ENERGY * scale;
    const threshold = thresholdOf(THRESHOLD * scale, CONDUCTED * Math.sqrt(density / REFERENCE_DENSITY) * loss, laser);
    const spread = loss === 1 ? SPREAD : SPREAD * 1.3;
    return {
        threshold,
        energy,
        fade: 1,
        errors: { threshold: threshold * SPREAD_THRESHOLD, energy: energy * spread, fade: 0 },
        covariance: [(threshold * SPREAD_THRESHOLD) ** 2, 0, 0, 0, (energy * spread) ** 2, 0, 0, 0, 0],
        fadeAssumed: FADE_SPREAD,
        variance: 1,
        darkest: threshold,
        measuring: 0.02,
        guess: true,
        rows: [],
        notes: written === undefined ? ['no-coupon', 'no-density'] : ['no-coupon'],
    };
}

/**
 * Dose (J/mm2) below which nothing is taken off, F: that of a skin, and what runs away while the spot passes at full power, t = F / irradiance.
 * F = skin + conducted · √(F / irradiance) is a square equation in √F.
 */
function thresholdOf(skin: number, conducted: number, laser: Laser | undefined): number {
    const power = laser?.power?.value;
    const spot = spotOf(laser)?.diameter;
    // Far outside of any workshop it would say nothing.
    if (power === undefined || spot === undefined || !(power >= 0.01 && power <= 1e5 && spot <= 100)) return skin;
    const half = (conducted * spot) / Math.sqrt(power) / 2;
    return (half + Math.hypot(half, Math.sqrt(skin))) ** 2;
}

/** How many times as much energy short waves take, since bare, pale wood reflects a part of them. */
export function reflectionLoss(laser: Laser | undefined): number {
    const wavelength = laser?.wavelength?.value ?? laser?.beam?.wavelength?.value;
    if (wavelength === undefined || !(wavelength > 0) || wavelength > 2e-3) return 1;
    return wavelength < 0.7e-3 ? 1.3 : 2.5;
}
