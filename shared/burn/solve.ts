import type { Interval } from '../quantity/interval';
import type { Pace } from '../recipe/step';
import type { Laser } from '../recipe/stock';
import { type Spot, spotOf } from './beam';
import { depthOf, doseFor, doseOf, type Settings } from './dose';
import { type DepthLaw, predict } from './law';
import { linePitch, pitchForSpot } from './pitch';
import { leastPowerOf, settingFor, wattsAt } from './power-curve';
import { runUpSpeed } from './run-up-speed';
import { sureDose, surelyGives } from './surely';
import { doseForTone, isDarkerThanJudged, predictTone } from './tone';

/**
 * What is wanted: a depth in mm, or a tone from 0 (bare) to 1 (darkest without digging).
 * With `sure`, a probability, the depth is one that is to be reached at least so often. A `line` is followed once a pass:
 * its pitch follows from the spot, and it needs no run-up. `pace` says how deep a pass may go.
 */
export type Wish =
    | {
          readonly depth: number;
          readonly depthTolerance?: number;
          readonly sure?: number;
          readonly line?: boolean;
          readonly pace?: Pace;
      }
    | { readonly tone: number; readonly line?: boolean };

/** What stands in the recipe and is kept: W, mm/s, mm. */
export type Given = Partial<Settings>;

type Limit =
    | 'no-power' // the laser's power is not known
    | 'no-pitch' // neither pitch nor spot is known; a usual pitch stands in
    | 'no-top-speed' // the laser's top speed is not known; a usual speed stands in
    | 'power-over' // more power than the laser has
    | 'power-under' // less power than the laser can hold
    | 'speed-over' // faster than the laser moves
    | 'speed-under' // so slow that wood burns rather than engraves
    | 'passes-over' // more passes than anyone would run
    | 'heavy-pass' // a pass takes off more than chars little
    | 'below-threshold' // the dose of a pass takes nothing off
    | 'above-threshold' // a tone was wanted, and this digs
    | 'run-up' // the overtravel holds a solved speed down
    | 'unsure' // to be as sure of the depth as asked would take far more than the dose that reaches it half of the time
    | 'outside-coupon'; // the dose lies outside of the burnt rows

export interface Solution extends Settings {
    /** The setting that gives the power, as a part of the whole; absent if the laser's power is not known. */
    readonly powerRatio?: number;
    /** Dose of each pass (J/mm2). */
    readonly dose: number;
    readonly depth: Interval;
    /** 0 to 1, the darkest. */
    readonly tone: number;
    /** The tone with its interval, where the coupon was judged by it. */
    readonly judged?: Interval;
    /** Whether the settings give what was wanted, to its tolerance (else to five per cent or 0.02 mm). */
    readonly reached: boolean;
    /** Depth (mm) that is reached at least, as surely as the wish asks. */
    readonly surely?: number;
    readonly limits: readonly Limit[];
}

// @commonPractice What one pass may take off and char little, and the bounds of sense where the machine names none.
const LIGHT_PASS = 0.25; // mm
const PASS_AT_PACE: Readonly<Record<Pace, number>> = { fast: 0.4, gentle: 0.12 };
const EASY_POWER = 0.8;
const USUAL_TOP_SPEED = 300; // mm/s
const SLOWEST = 5; // mm/s, of an area
/** Where nobody says how far apart scan lines lie, mm. */
export const USUAL_PITCH = 0.1;
const MOST_PASSES = 30;
/** A depth that misses by less than this part of it was lost in rounding the settings. */
const ROUNDING = 2e-3;

interface Machine {
    readonly laser: Laser | undefined;
    readonly power: number | undefined;
    readonly least: number;
    readonly topSpeed: number;
    /** Fastest that the overtravel lets the head reach before the art begins. */
    readonly runUpSpeed: number;
}

/**
 * Settings inside the machine's limits that give the wish; whatever is given is kept as it is.
 * Speed is spent before power, and several light passes before one heavy one. Solved figures are
 * round (per cent of power, three digits of speed), and the depth is what the round ones give.
 * Undefined only if nothing can be said: no power known or given, or figures that are none.
 */
export function solveDepth(law: DepthLaw, laser: Laser | undefined, wish: Wish, given: Given = {}): Solution | undefined {
    const limits: Limit[] = [];
    if (!canBeAsked(wish, given)) return undefined;
    const machine = machineOf(laser, wish.line === true);
    const pitch = given.pitch ?? usualPitch(law, wish, spotOf(laser));
    if (pitch === undefined) limits.push('no-pitch');
    if (laser?.topSpeed === undefined && given.speed === undefined) limits.push('no-top-speed');
    if (machine.power === undefined && given.power === undefined) return undefined;

    const most = heaviestPass(wish, law);
    let best: Solution | undefined;
    for (const passes of passesToTry(wish, given)) {
        const settings = settle(law, machine, wish, { ...given, pitch: pitch ?? USUAL_PITCH, passes });
        const solution = settings && judge(law, laser, machine, wish, settings, limits);
        if (solution === undefined) continue;
        if (best === undefined || better(solution, best, wish, most)) best = solution;
        if (solution.reached && isSettled(solution, wish) && !solution.limits.includes('heavy-pass')) break;
    }
    if (best === undefined || given.speed !== undefined) return best;
    return isHeldByRunUp(best, law, machine, wish, given) ? { ...best, limits: [...best.limits, 'run-up'] } : best;
}

/** Whether the figures are such as a machine could have, and what is wished is no less than nothing. */
function canBeAsked(wish: Wish, given: Given): boolean {
    if (!Object.values(given).every((value) => value === undefined || (value > 0 && value <= 1e6))) return false;
    return (given.passes ?? 1) >= 1 && ('tone' in wish ? wish.tone : wish.depth) >= 0;
}

function usualPitch(law: DepthLaw, wish: Wish, spot: Spot | undefined): number | undefined {
    return wish.line === true ? linePitch(spot) : (judgedPitch(law, wish) ?? pitchForSpot(spot));
}

/** Whether the head would go faster if it had more room to speed up in. */
function isHeldByRunUp(best: Solution, law: DepthLaw, machine: Machine, wish: Wish, given: Given): boolean {
    const open = { ...machine, runUpSpeed: Number.POSITIVE_INFINITY };
    const faster = settle(law, open, wish, { ...given, pitch: best.pitch, passes: best.passes });
    return (faster?.speed ?? 0) > best.speed * 1.01;
}

/** The pitch at which the squares were burnt that the wish is solved from: the same dose looks otherwise at another. */
function judgedPitch(law: DepthLaw, wish: Wish): number | undefined {
    return ('tone' in wish ? law.tone?.pitch : undefined) ?? law.pitch;
}

function passesToTry(wish: Wish, { passes }: Given): number[] {
    if (passes !== undefined) return [passes];
    return 'tone' in wish ? [1] : range(1, MOST_PASSES);
}

function range(from: number, to: number): number[] {
    return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}

function machineOf(laser: Laser | undefined, followed: boolean): Machine {
    const positive = (value: number | undefined): number | undefined =>
        value !== undefined && value > 0 && value < 1e6 ? value : undefined;
    const power = positive(laser?.power?.value);
    return {
        laser,
        power,
        least: Math.min(positive(leastPowerOf(laser)) ?? 0, power ?? 0),
        topSpeed: positive(laser?.topSpeed?.value) ?? USUAL_TOP_SPEED,
        // A line needs no run-up: it is followed from its start.
        runUpSpeed: followed ? Number.POSITIVE_INFINITY : (runUpSpeed(laser) ?? Number.POSITIVE_INFINITY),
    };
}

/** Power and speed for a number of passes. */
function settle(
    law: DepthLaw,
    machine: Machine,
    wish: Wish,
    known: Given & { pitch: number; passes: number },
): Settings | undefined {
    const { pitch, passes } = known;
    if (known.power !== undefined && known.speed !== undefined) return { power: known.power, speed: known.speed, pitch, passes };
    const dose = 'tone' in wish ? toneDose(law, wish.tone) / passes : depthDose(law, wish, passes);
    if (!(dose > 0) || !Number.isFinite(dose)) return undefined;
    if (known.speed !== undefined)
        return { power: roundPower(dose * known.speed * pitch, machine, wantsMore(wish)), speed: known.speed, pitch, passes };
    if (known.power !== undefined)
        return { power: known.power, speed: roundSpeed(known.power / (dose * pitch), machine, wish), pitch, passes };
    return solveUnconstrained(dose, machine, pitch, passes, wish);
}

/** Dose of each pass: for a depth that is to be surely reached more than reaches it half of the time, within reason. */
function depthDose(law: DepthLaw, { depth, sure }: Extract<Wish, { depth: number }>, passes: number): number {
    return (sure === undefined ? undefined : sureDose(law, depth, passes, sure)) ?? doseFor(law, depth, passes);
}

/** Rounding must not take away what makes it sure. */
function wantsMore(wish: Wish): boolean {
    return 'depth' in wish && wish.sure !== undefined;
}

function isSettled({ surely, limits }: Solution, wish: Wish): boolean {
    return surely === undefined || 'tone' in wish || isSure(surely, wish.depth) || limits.includes('unsure');
}

/** Whether what is reached at least is what was wished, to the rounding of the settings. */
export function isSure(surely: number, depth: number): boolean {
    return surely >= depth * (1 - ROUNDING);
}

/** Dose of all passes together that gives a tone; nothing for none. */
function toneDose(law: DepthLaw, tone: number): number {
    const held = Math.min(Math.max(tone, 0), 1);
    return held === 0 || law.tone === undefined ? held * law.darkest : doseForTone(law.tone, held);
}

/** As fast as the machine goes with the power it has to spare; only where slowest is still too fast, all its power. */
function solveUnconstrained(dose: number, machine: Machine, pitch: number, passes: number, wish: Wish): Settings {
    const atTop = dose * fastest(machine) * pitch;
    const easy = noFaster(roundPower(Math.min(atTop, EASY_POWER * machine.power!), machine), atTop, machine);
    const power = easy / (dose * pitch) >= SLOWEST ? easy : machine.power!;
    return { power, speed: roundSpeed(power / (dose * pitch), machine, wish), pitch, passes };
}

/** A low power that was rounded up wants more speed than there is, and the dose would come out too high: a per cent less then. */
function noFaster(power: number, atTop: number, machine: Machine): number {
    if (power <= atTop * 1.02) return power;
    const setting = settingFor(machine.laser, power) ?? 0;
    const less = wattsAt(machine.laser, setting - 0.01) ?? 0;
    return less > 0 && less >= machine.least ? less : power;
}

/** To a setting of whole per cent, within what the laser can hold. */
function roundPower(power: number, machine: Machine, up = false): number {
    if (machine.power === undefined) return power;
    const exact = (settingFor(machine.laser, power) ?? 1) * 100;
    const percent = Math.max(1, up ? Math.ceil(exact - 1e-6) : Math.round(exact));
    return Math.min(Math.max(wattsAt(machine.laser, percent / 100) ?? power, machine.least), machine.power);
}

function fastest({ topSpeed, runUpSpeed }: Machine): number {
    return Math.min(topSpeed, runUpSpeed);
}

function roundSpeed(speed: number, machine: Machine, wish: Wish): number {
    const round = Number(speed.toPrecision(3));
    // Three digits; the last of them less where more dose is the safe side.
    const digit = 10 ** (Math.floor(Math.log10(speed)) - 2);
    const safe = wantsMore(wish) && round > speed * (1 + 1e-9) ? Number((round - digit).toPrecision(3)) : round;
    return Math.min(Math.max(safe, SLOWEST), fastest(machine));
}

function judge(
    law: DepthLaw,
    laser: Laser | undefined,
    machine: Machine,
    wish: Wish,
    settings: Settings,
    before: readonly Limit[],
): Solution | undefined {
    const depth = predict(law, settings);
    if (depth === undefined) return undefined;
    const dose = doseOf(settings);
    const surely = 'depth' in wish && wish.sure !== undefined ? surelyGives(law, settings, wish.sure) : undefined;
    const limits = [...before];
    addMachineLimits(limits, laser, machine, settings);
    addLawLimits(limits, law, wish, settings, depth.value, surely);
    const all = dose * settings.passes;
    const judged = law.tone && predictTone(law.tone, all);
    const tone = judged?.value ?? Math.min(1, all / law.darkest);
    const setting = machine.power === undefined ? undefined : settingFor(laser, settings.power);
    return {
        ...settings,
        ...(setting !== undefined && { powerRatio: setting }),
        dose,
        depth,
        tone,
        ...(judged !== undefined && { judged }),
        reached: missBy(wish, depth.value, judged?.value ?? all / law.darkest) <= 1,
        ...(surely !== undefined && { surely }),
        limits,
    };
}

function addMachineLimits(limits: Limit[], laser: Laser | undefined, machine: Machine, { power, speed, passes }: Settings): void {
    const add = adderTo(limits);
    if (machine.power === undefined) add('no-power', true);
    else add('power-over', power > machine.power * (1 + 1e-9));
    add('power-under', power < machine.least * (1 - 1e-9));
    add('speed-over', laser?.topSpeed !== undefined && speed > machine.topSpeed * (1 + 1e-9));
    add('speed-under', speed <= SLOWEST);
    add('passes-over', passes > MOST_PASSES);
}

/** @param depth mm, of all passes; @param surely what is reached at least, where that is wished */
function addLawLimits(
    limits: Limit[],
    law: DepthLaw,
    wish: Wish,
    settings: Settings,
    depth: number,
    surely: number | undefined,
): void {
    const add = adderTo(limits);
    add('heavy-pass', depth / settings.passes > heaviestPass(wish, law) * 1.02);
    if ('tone' in wish) {
        add('above-threshold', depth > 0.02);
        add('outside-coupon', law.tone !== undefined && isDarkerThanJudged(law.tone, wish.tone));
        return;
    }
    const dose = doseOf(settings);
    add('below-threshold', depth === 0 && wish.depth > 0);
    add('outside-coupon', law.range !== undefined && (dose < law.range.low * 0.95 || dose > law.range.high * 1.05));
    add('unsure', surely !== undefined && sureDose(law, wish.depth, settings.passes, wish.sure!) === undefined);
}

function adderTo(limits: Limit[]): (limit: Limit, when: boolean) => void {
    return (limit, when) => {
        if (when && !limits.includes(limit)) limits.push(limit);
    };
}

/** How far from the wish, in units of what would pass. */
function missBy(wish: Wish, depth: number, tone: number): number {
    // What is to go through is not missed by going further.
    if ('depth' in wish && wish.sure !== undefined) return depth >= wish.depth * (1 - ROUNDING) ? 0 : 2;
    if ('depth' in wish) return Math.abs(depth - wish.depth) / Math.max(wish.depthTolerance ?? 0, 0.05 * wish.depth, 0.02);
    return Math.abs(tone - wish.tone) / 0.05;
}

function better(one: Solution, other: Solution, wish: Wish, most: number): boolean {
    if (one.reached !== other.reached) return one.reached;
    const [sure, otherSure] = [one, other].map(
        ({ surely }) => surely === undefined || 'tone' in wish || isSure(surely, wish.depth),
    );
    if (one.reached && sure !== otherSure) return sure!;
    if (one.reached) return heaviness(one, most) < heaviness(other, most) - 1e-9;
    return 'depth' in wish && Math.abs(one.depth.value - wish.depth) < Math.abs(other.depth.value - wish.depth) - 1e-9;
}

function heaviness(solution: Solution, most: number): number {
    return Math.max(most, solution.depth.value / solution.passes);
}

/** What a pass of a wish may take off (mm). In haste no more than one of the measured doses does: beyond them nobody knows of char. */
function heaviestPass(wish: Wish, law: DepthLaw): number {
    const pace = 'depth' in wish ? wish.pace : undefined;
    if (pace === undefined) return LIGHT_PASS;
    if (pace === 'gentle') return PASS_AT_PACE.gentle;
    const measured = law.range === undefined ? 0 : depthOf(law, law.range.high, 1);
    return Math.max(LIGHT_PASS, Math.min(PASS_AT_PACE.fast, measured));
}
