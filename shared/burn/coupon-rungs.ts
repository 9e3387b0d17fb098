import type { Laser } from '../recipe/stock';
import { depthOf, doseFor, doseOf } from './dose';
import type { DepthLaw } from './law';
import { leastPowerOf, settingFor, wattsAt } from './power-curve';

/** What a rung of a coupon is burnt with: setting as a part of the whole, W, mm/s. */
export interface Rung {
    readonly powerRatio: number;
    readonly power: number;
    readonly speed: number;
    readonly passes: number;
}

/** What the rungs of a coupon are chosen from. */
export interface RungChoice {
    readonly law: DepthLaw;
    readonly laser: Laser;
    readonly pitch: number;
    readonly topSpeed: number;
    /** Depth (mm) that the strongest rungs may give, all their passes together. */
    readonly deepest: number;
    readonly rungs: number;
    /** Most passes of a rung; 1 for a coupon of single passes. */
    readonly passes: number;
    readonly powers?: readonly number[] | undefined;
    readonly speeds?: readonly number[] | undefined;
}

/** How many rungs may be asked for: three numbers of a law need some, and nobody measures more. */
export const rungLimits = { least: 4, most: 60 };

const JUST_DIGS = 0.03; // mm
// Heavier single passes char more than they tell. @commonPractice
const DEEPEST_PASS = 0.8; // mm
const SLOWEST = 1; // mm/s
/**
 * Part of the rungs that has several passes, and from which part of the deepest on. What tells the decay of passes is the depth that
 * they lack of so many first passes, and that is lost in the measuring error of shallow squares.
 */
const REPEATED = 3 / 8;
const REPEATED_FROM = 0.5;

/**
 * The rungs of a coupon, from the least energy on an area to the most. With both powers and speeds each power is burnt at each speed;
 * else the doses go up in even ratios from what just digs, and powers (or speeds) take turns, so that rungs of like dose differ in how it is made.
 */
export function chooseRungs(choice: RungChoice): Rung[] {
    const { powers, speeds } = choice;
    const rungs = powers !== undefined && speeds !== undefined ? combine(choice, powers, speeds) : climb(choice);
    const seen = new Set<string>();
    return rungs
        .filter(({ powerRatio, speed, passes }) => {
            const key = `${powerRatio} ${speed} ${passes}`;
            return !seen.has(key) && seen.add(key);
        })
        .toSorted((a, b) => energyOn(a) - energyOn(b) || a.passes - b.passes);
}

/** Joules on a millimetre of line, all passes. */
function energyOn({ power, speed, passes }: Rung): number {
    return (power / speed) * passes;
}

function climb(choice: RungChoice): Rung[] {
    const { law, rungs, passes } = choice;
    const repeated = passes > 1 ? Math.min(rungs - 1, Math.max(1, Math.round(rungs * REPEATED))) : 0;
    const reach = reachableDoses(choice);
    const clamp = (dose: number): number => Math.min(Math.max(dose, reach.low), reach.high);
    const gentlest = clamp(doseFor(law, Math.min(JUST_DIGS, choice.deepest), 1));
    // Doses all alike would not tell threshold and energy apart.
    const strongest = clamp(Math.max(doseFor(law, Math.min(DEEPEST_PASS, choice.deepest), 1), 2 * gentlest));
    const single = rungs - repeated;
    const singles = range(single).map((i) => ({ dose: gentlest * (strongest / gentlest) ** partOf(i, single), passes: 1 }));
    const repeats = range(repeated).map((i) => {
        // Every third has a pass less, so that the decay is seen over two counts of passes.
        const count = passes > 2 && i % 3 === 1 ? passes - 1 : passes;
        const from = Math.min(choice.deepest, Math.max(REPEATED_FROM * choice.deepest, count * JUST_DIGS));
        const depth = from + (choice.deepest - from) * partOf(i, repeated);
        return { dose: clamp(doseFor(law, depth, count)), passes: count };
    });
    return [singles, repeats].flatMap((list) =>
        list.flatMap(({ dose, passes: count }, turn) => {
            const ways = waysTo(choice, dose);
            const way = ways[turn % Math.max(1, ways.length)];
            return way === undefined ? [] : [{ ...way, passes: count }];
        }),
    );
}

/** Of 0 to 1, how far along the i-th of `count` is. A single one is the last. */
function partOf(i: number, count: number): number {
    return count > 1 ? i / (count - 1) : 1;
}

function range(count: number): number[] {
    return Array.from({ length: count }, (_, i) => i);
}

/** The settings that give a dose (J/mm2), rounded as a machine takes them; its powers or speeds in their order. */
function waysTo(choice: RungChoice, dose: number): Omit<Rung, 'passes'>[] {
    const { laser, pitch, topSpeed } = choice;
    if (choice.speeds !== undefined) {
        return choice.speeds.flatMap((speed) => {
            const powerRatio = Math.round(100 * (settingFor(laser, dose * speed * pitch) ?? 0)) / 100;
            const power = wattsAt(laser, powerRatio) ?? 0;
            return powerRatio > 0 && powerRatio <= 1 && power >= (leastPowerOf(laser) ?? 0) * (1 - 1e-9)
                ? [{ powerRatio, power, speed }]
                : [];
        });
    }
    return powersOf(choice).flatMap((powerRatio) => {
        const power = wattsAt(laser, powerRatio) ?? 0;
        const speed = power / (dose * pitch);
        const round = Math.min(topSpeed, Math.max(SLOWEST, Number(speed.toPrecision(2))));
        return power > 0 && speed <= topSpeed * 1.02 && speed >= SLOWEST * 0.98 ? [{ powerRatio, power, speed: round }] : [];
    });
}

function reachableDoses(choice: RungChoice): { low: number; high: number } {
    const { laser, pitch, topSpeed, speeds } = choice;
    const full = laser.power?.value ?? 0;
    const watts =
        speeds === undefined
            ? powersOf(choice).map((part) => wattsAt(laser, part) ?? part * full)
            : [Math.max(leastPowerOf(laser) ?? 0, wattsAt(laser, 0.01) ?? 0), full];
    const run = speeds ?? [SLOWEST, topSpeed];
    return {
        low: doseOf({ power: Math.min(...watts), speed: Math.max(...run), pitch }),
        high: doseOf({ power: Math.max(...watts), speed: Math.min(...run), pitch }),
    };
}

/** Four settings in even steps of whole per cent if none are asked for: the lowest just digs at top speed. */
function powersOf({ powers, law, laser, pitch, topSpeed }: RungChoice): readonly number[] {
    if (powers !== undefined) return powers;
    const settingOf = (watts: number): number => settingFor(laser, watts) ?? 0;
    const digging = settingOf(doseFor(law, JUST_DIGS, 1) * topSpeed * pitch);
    const least = Math.ceil(100 * settingOf(leastPowerOf(laser) ?? 0) - 1e-9) / 100;
    const low = Math.min(0.5, Math.max(0.1, digging, least));
    return range(4).map((i) => Math.round(100 * (low + (i * (0.9 - low)) / 3)) / 100);
}

/** Each power at each speed once; and a third as many again with more passes, where those dig deep but no deeper than the board bears. */
function combine(choice: RungChoice, powers: readonly number[], speeds: readonly number[]): Rung[] {
    const { law, laser, pitch, passes, deepest } = choice;
    const singles = powers.flatMap((powerRatio) =>
        speeds.map((speed) => ({ powerRatio, power: wattsAt(laser, powerRatio) ?? 0, speed, passes: 1 })),
    );
    if (passes < 2) return singles;
    const known = singles.map((rung) => {
        const dose = doseOf({ ...rung, pitch });
        return { rung, depth: depthOf(law, dose, passes), digs: depthOf(law, dose, 1) >= JUST_DIGS };
    });
    const byDepth = known.toSorted((a, b) => b.depth - a.depth);
    const bearable = byDepth.filter(({ digs, depth }) => digs && depth <= deepest);
    const tooDeep = byDepth.filter(({ digs, depth }) => digs && depth > deepest).reverse();
    const colouring = byDepth.filter(({ digs }) => !digs);
    const repeated = [...bearable, ...tooDeep, ...colouring].slice(0, Math.ceil(singles.length / 3));
    return [...singles, ...repeated.map(({ rung }) => ({ ...rung, passes }))];
}
