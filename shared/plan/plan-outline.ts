import { spotOf } from '../burn/beam';
import { depthOf, doseOf, sigmaOf } from '../burn/dose';
import type { DepthLaw } from '../burn/law';
import { depthAtShare, doseToFloor, doseToTone, type LinePasses, lineDose, lineEnergy } from '../burn/outline-pass';
import { outputOf } from '../burn/output';
import { leastPowerOf, settingFor, wattsAt } from '../burn/power-curve';
import type { Region } from '../geometry/region';
import type { Laser } from '../recipe/stock';
import { heldSpeed } from '../toolpath/held-speed';
import { outlinePaths } from '../toolpath/outline';
import type { Path } from '../toolpath/path';
import { strongestOf } from '../toolpath/strongest';
import { contentKey } from './content-key';
import type { LaserSettings, OutlineSettings, StrongPlace } from './laser-plan';
import type { Memo } from './memo';
import { evenPaths, motionOf } from './toolpaths';

/** What an outline pass is worked out from. */
export interface OutlineAsked {
    readonly passes: number;
    /** Of the area within it. */
    readonly settings: LaserSettings;
    /** The area is coloured and not dug. */
    readonly isTone: boolean;
    readonly law: DepthLaw;
    readonly laser: Laser | undefined;
    /** What is drawn, before its edge is moved by tenths. */
    readonly drawn: Region;
}

/**
 * Settings of an outline pass of its own: a dose that makes the edge as deep as the floor, or as dark as the area, at a speed that the head
 * holds along what is drawn. Where the laser cannot go down to the power for that, the edge gets more, and `deepest` says how deep that is.
 */
export function outlineSettings(asked: OutlineAsked, memo: Memo): OutlineSettings {
    const { settings, laser, drawn, passes } = asked;
    const motion = motionOf(laser);
    const held = memo.get('held-speed', contentKey(memo.keyOf(drawn), motion), () => heldSpeed(pathsAround(drawn, memo), motion));
    const spot = spotOf(laser);
    const sigma = spot === undefined ? undefined : sigmaOf(spot.diameter);
    // Without a spot: half of what a scan line gives, which is what the beam's width takes from the edge.
    const energy = sigma === undefined ? (doseOf(settings) * settings.pitch) / 2 : lineEnergy(wantedDose(asked), sigma);
    const { power, powerRatio } = powerFor(energy * held, laser, settings);
    const speed = rounded(Math.min(held, power / energy));
    const dose = sigma === undefined ? undefined : lineDose(power / speed, sigma);
    return {
        power,
        powerRatio,
        speed,
        passes,
        purpose: asked.isTone ? 'tone' : 'depth',
        ...(dose === undefined ? {} : { dose, deepest: deepestAt(asked, dose) }),
        ...(dose === undefined
            ? {}
            : strongPlace(drawn, { power, speed }, (times) => deepestAt(asked, times * dose), laser, memo)),
    };
}

/** The place of outlines that gets most, with the depth (mm) that so many times the dose gives. */
function strongPlace(
    drawn: Region,
    { power, speed }: Pick<LaserSettings, 'power' | 'speed'>,
    depthAt: (times: number) => number,
    laser: Laser | undefined,
    memo: Memo,
): { readonly strongest?: StrongPlace } {
    const spot = spotOf(laser);
    if (spot === undefined) return {};
    const paths = evenPaths(pathsAround(drawn, memo), { power, speed }, laser, memo);
    // With power that follows the speed no place gets more; the paths then are not cut into steps.
    const motion = motionOf(laser);
    const key = contentKey(memo.keyOf(paths), speed, motion, spot.diameter);
    const found = outputOf(laser).followsSpeed
        ? undefined
        : memo.get('strongest', key, () => strongestOf(paths, speed, motion, sigmaOf(spot.diameter)));
    return found === undefined ? {} : { strongest: { ...found, deepest: depthAt(found.times) } };
}

function pathsAround(drawn: Region, memo: Memo): readonly Path[] {
    return memo.get('paths-around', memo.keyOf(drawn), () => outlinePaths(drawn));
}

/** Where a step that follows its outline digs most. */
export function strongestOfLine(
    line: Region,
    { power, speed, passes }: LaserSettings,
    law: DepthLaw,
    laser: Laser | undefined,
    memo: Memo,
): { readonly strongest?: StrongPlace } {
    const spot = spotOf(laser);
    if (spot === undefined) return {};
    const dose = lineDose(power / speed, sigmaOf(spot.diameter));
    return strongPlace(line, { power, speed }, (times) => depthOf(law, times * dose, passes), laser, memo);
}

/** The line as a wall is worked out with it. */
export function lineOf(outline: OutlineSettings | undefined): LinePasses | undefined {
    return outline?.dose === undefined ? undefined : { dose: outline.dose, passes: outline.passes };
}

/** Depth (mm) of the deepest place across the edge. */
function deepestAt({ settings, law, passes }: OutlineAsked, dose: number): number {
    const burn = { law, dose: doseOf(settings), passes: settings.passes, line: { dose, passes } };
    return Math.max(...Array.from({ length: 41 }, (_, k) => depthAtShare(burn, k / 40)));
}

function wantedDose({ settings, isTone, law, passes }: OutlineAsked): number {
    const burn = { law, dose: doseOf(settings), passes: settings.passes };
    return isTone || depthOf(law, burn.dose, burn.passes) === 0
        ? doseToTone(burn, passes, law.darkest)
        : doseToFloor(burn, passes);
}

/** A power that can be set, in whole per cent downwards, but not below the least that the laser holds. */
function powerFor(wanted: number, laser: Laser | undefined, area: LaserSettings): Pick<OutlineSettings, 'power' | 'powerRatio'> {
    const full = laser?.power?.value ?? area.power;
    const least = Math.min(leastPowerOf(laser) ?? 0, full);
    const setting = settingFor(laser, Math.min(full, Math.max(least, wanted)));
    if (setting === undefined) return { power: wanted, powerRatio: Number.NaN };
    const isLeast = wanted <= least;
    const powerRatio = isLeast ? setting : Math.max(0.01, Math.floor(setting * 100 + 1e-6) / 100);
    const power = wattsAt(laser, powerRatio) ?? wanted;
    return power < least ? { power: least, powerRatio: settingFor(laser, least) ?? powerRatio } : { power, powerRatio };
}

/** To three digits, as a maker would set it. */
function rounded(speed: number): number {
    return Number(speed.toPrecision(3));
}
