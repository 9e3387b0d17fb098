import { bracket } from '../quantity/bracket';
import type { Laser } from '../recipe/stock';
import { spotOf } from './beam';
import { type CutChances, type CutLaw, cutChances, cutDepth, throughChance } from './cut-law';
import { doseOf } from './dose';
import { linePitch } from './pitch';
import { leastPowerOf, settingFor, wattsAt } from './power-curve';
import { type Given, type Solution, USUAL_PITCH } from './solve';
import { MOST_OVERBURN } from './surely';

/** What a cut is to come through (mm), and with which probability. */
export interface CutWish {
    readonly thickness: number;
    readonly sure: number;
}

// @commonPractice Slower than the first a kerf chars and may catch fire, slower than the second it burns more than it cuts.
const EASY_SPEED = 4; // mm/s
export const SLOWEST_CUT = 2; // mm/s
export const MOST_CUT_PASSES = 8;
const USUAL_TOP_SPEED = 300; // mm/s

/**
 * Settings for a cut that come through as surely as is asked, with all the power and the fewest passes that need not crawl;
 * whatever is given is kept. Where being so sure would take more than 1.5 times the energy that comes through half of the time,
 * that energy is taken instead, and `unsure` says so. Undefined where no power is known.
 */
export function solveCut(law: CutLaw, laser: Laser | undefined, wish: CutWish, given: Given = {}): Solution | undefined {
    if (!Object.values(given).every((value) => value === undefined || (value > 0 && value <= 1e6))) return undefined;
    if (!(wish.thickness > 0 && wish.thickness < 1e3) || !((given.passes ?? 1) >= 1)) return undefined;
    const full = laser?.power?.value;
    if (given.power === undefined && !(full !== undefined && full > 0 && full < 1e6)) return undefined;
    const counts = given.passes === undefined ? Array.from({ length: MOST_CUT_PASSES }, (_, i) => i + 1) : [given.passes];
    const tried = counts.map((passes) => settle(law, laser, wish, { ...given, passes }));
    const best =
        tried.find(({ isEnough, speed }) => isEnough && speed >= EASY_SPEED) ??
        tried.find(({ isEnough }) => isEnough) ??
        tried.reduce((a, b) => (b.chance > a.chance ? b : a));
    return judge(best, laser, wish);
}

interface Tried {
    readonly chances: CutChances;
    readonly power: number;
    readonly speed: number;
    readonly passes: number;
    readonly chance: number;
    /** Comes through as surely as asked, or half of the time where that is all that can be asked. */
    readonly isEnough: boolean;
    readonly isUnsure: boolean;
}

function settle(law: CutLaw, laser: Laser | undefined, wish: CutWish, given: Given & { readonly passes: number }): Tried {
    const { passes } = given;
    const power = given.power ?? laser!.power!.value;
    const chances = cutChances(law, passes, wish.thickness);
    const chanceAt = (speed: number, watts = power): number =>
        throughChance(chances, { power: watts, speed, passes }, wish.thickness);
    if (given.speed !== undefined) {
        const speed = given.speed;
        const watts = given.power ?? leastWatts(laser, power, (each) => chanceAt(speed, each) >= wish.sure);
        const chance = chanceAt(speed, watts);
        return { chances, power: watts, speed, passes, chance, isEnough: chance >= wish.sure, isUnsure: false };
    }
    const top = laser?.topSpeed?.value ?? USUAL_TOP_SPEED;
    const fastest = (chance: number): number => fastestThat((speed) => chanceAt(speed) >= chance, top);
    const [sure, half] = [fastest(wish.sure), fastest(0.5)];
    // Energy goes as one over the speed.
    const isUnsure = sure * MOST_OVERBURN < half;
    const wanted = isUnsure ? half : sure;
    const speed = Math.max(wanted, Math.min(SLOWEST_CUT, top));
    return { chances, power, speed, passes, chance: chanceAt(speed), isEnough: wanted >= SLOWEST_CUT, isUnsure };
}

/** Fastest speed (mm/s, three digits) at which something still holds; less than can be driven where it never does. */
function fastestThat(holds: (speed: number) => boolean, top: number): number {
    if (holds(top)) return top;
    const low = Math.exp(bracket(Math.log(1e-3), Math.log(top), (log) => holds(Math.exp(log))).last);
    const digit = 10 ** (Math.floor(Math.log10(low)) - 2);
    return Number((Math.floor(low / digit + 1e-9) * digit).toPrecision(3));
}

/** Least setting of whole per cent with which something holds, all the power where none does. */
function leastWatts(laser: Laser | undefined, full: number, holds: (watts: number) => boolean): number {
    const least = leastPowerOf(laser) ?? 0;
    for (let percent = 1; percent < 100; percent++) {
        const watts = wattsAt(laser, percent / 100) ?? full;
        if (watts >= least && watts <= full && holds(watts)) return watts;
    }
    return full;
}

function judge({ chances, power, speed, passes, chance, isUnsure }: Tried, laser: Laser | undefined, wish: CutWish): Solution {
    const pitch = linePitch(spotOf(laser)) ?? USUAL_PITCH;
    const settings = { power, speed, passes };
    const full = laser?.power?.value;
    const powerRatio = full === undefined ? undefined : settingFor(laser, power);
    const limits: Solution['limits'][number][] = [];
    if (isUnsure) limits.push('unsure');
    if (full === undefined) limits.push('no-power');
    else if (power > full * (1 + 1e-9)) limits.push('power-over');
    if (power < (leastPowerOf(laser) ?? 0) * (1 - 1e-9)) limits.push('power-under');
    if (laser?.topSpeed !== undefined && speed > laser.topSpeed.value * (1 + 1e-9)) limits.push('speed-over');
    if (speed <= SLOWEST_CUT) limits.push('speed-under');
    if (passes > MOST_CUT_PASSES) limits.push('passes-over');
    return {
        ...settings,
        pitch,
        ...(powerRatio !== undefined && { powerRatio }),
        dose: doseOf({ power, speed, pitch }),
        depth: {
            value: cutDepth(chances, settings, 0.5),
            low: cutDepth(chances, settings, 0.975),
            high: cutDepth(chances, settings, 0.025),
        },
        tone: 1,
        reached: chance >= 0.5 - 1e-3,
        surely: cutDepth(chances, settings, wish.sure),
        limits,
    };
}
