import type { Solution } from '../burn/solve';
import type { Interval } from '../quantity/interval';
import type { Engrave } from '../recipe/step';
import { contentKey } from './content-key';
import { KeptOn } from './kept';
import type { LaserPlan, LaserSettings } from './laser-plan';
import { machineWork } from './machine-work';
import type { Memo } from './memo';
import type { Plan, StepPlan } from './plan';
import { solveWithPasses } from './solve-settings';
import { burningsOf } from './toolpaths';

/** Settings in some number of passes that give the depth of a step, and what they cost. Powers W, speeds mm/s, depths mm. */
export interface TradePoint {
    readonly passes: number;
    readonly power: number;
    readonly powerRatio: number;
    readonly speed: number;
    /** Of each pass, J/mm2: wood chars the more, the more of it one pass brings. */
    readonly dose: number;
    /** What each pass takes off. */
    readonly each: number;
    /** The machine's time for the step, s. */
    readonly time: number;
    readonly depth: Interval;
    /** The step is planned so. */
    readonly chosen: boolean;
    /** Whether the dose lies within those that squares were burnt with. */
    readonly measured: boolean;
    /** As many passes as planned, at a lower speed and power: the head turns sooner at the end of each line, and is done sooner. */
    readonly sooner?: true;
}

/** More passes are not looked at, unless the step is planned with them. */
const MOST = 8;

/** Parts of the planned speed at which it is looked whether a head that turns sooner is done sooner. */
const SLOWER = [0.85, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2];
/** It has to save so much of the time to be worth another setting (own choice). */
const WORTH = 0.1;

/**
 * By how many passes a depth can be reached, and what each way costs: time, the range of the depth, char. What is written of power, speed or
 * pitch is kept. Undefined of what is no depth, of what power and speed are written for, and where fewer than two ways lead there.
 * Last, where it saves time, comes the planned number of passes at another speed: the dose, and with it the depth, stays as it is.
 */
export function planTrade(plan: Plan, index: number, memo: Memo): readonly TradePoint[] | undefined {
    const burnt = burntOf(plan.steps[index]!);
    const blank = plan.blanks.find(({ name }) => name === burnt?.laser.blank);
    if (burnt === undefined || blank === undefined) return undefined;
    const { step, laser, settings } = burnt;
    const { passes: planned } = settings;
    const timeOf = timer(plan, laser, blank.size, memo);
    const ways = Array.from({ length: Math.max(MOST, planned) }, (_, at) => at + 1);
    const pointOf = (way: Way | undefined): TradePoint[] => {
        if (way === undefined || !way.reached) return [];
        const { power, speed, pitch, passes, powerRatio = Number.NaN, limits } = way;
        const depth = 'gives' in way ? way.gives : way.depth;
        return [
            {
                passes,
                power,
                powerRatio,
                speed,
                dose: power / (speed * pitch),
                each: depth.value / passes,
                time: timeOf({ ...settings, power, speed, passes }),
                depth,
                chosen: way === settings,
                measured: !limits.includes('outside-coupon'),
            },
        ];
    };
    const solve = (passes: number, from: Engrave = step): Way | undefined =>
        solveWithPasses(from, passes, blank, plan.recipe, memo);
    const points = ways
        .filter((passes) => passes <= MOST || passes === planned)
        .flatMap((passes) => pointOf(passes === planned ? settings : solve(passes)));
    const others = step.speed !== undefined || step.power !== undefined ? [] : SLOWER;
    const slower = others.flatMap((part) => {
        const speed = {
            value: Number((settings.speed * part).toPrecision(2)),
            tolerance: 0,
            unit: 'mm/s',
            dimension: 'speed' as const,
            where: step.where,
        };
        return pointOf(solve(planned, { ...step, speed }));
    });
    const best = slower.toSorted((one, other) => one.time - other.time)[0];
    const isWorth = best !== undefined && best.time < (1 - WORTH) * timeOf(settings);
    const all = isWorth ? [...points, { ...best, sooner: true as const }] : points;
    return all.length < 2 ? undefined : all;
}

type Way = LaserSettings | Solution;

interface Burnt {
    readonly step: Engrave;
    readonly laser: LaserPlan;
    readonly settings: LaserSettings;
}

/** A step with settings that other numbers of passes could give its depth with. */
function burntOf({ step, laser }: StepPlan): Burnt | undefined {
    const settings = laser?.settings;
    if (step.kind !== 'engrave' || step.depth === undefined || settings === undefined) return undefined;
    if (laser!.goesOn !== undefined || (step.power !== undefined && step.speed !== undefined)) return undefined;
    return { step, laser: laser!, settings };
}

/** Whether other numbers of passes could give a step its depth. */
export function mayTrade(plan: StepPlan): boolean {
    return burntOf(plan) !== undefined;
}

type Trades = ReadonlyMap<number, readonly TradePoint[]>;

const trades = /* @__PURE__ */ new KeptOn<Plan, Trades>();

/** Every trade of a plan, by the index of its step; kept on the plan. */
export function allTrades(plan: Plan, memo: Memo): Trades {
    return trades.getOr(plan, () => {
        const all = [...plan.steps.keys()].map((index) => [index, planTrade(plan, index, memo)] as const);
        return new Map(all.flatMap(([index, trade]) => (trade === undefined ? [] : [[index, trade] as const])));
    });
}

/** The same, where they have been worked out. */
export function knownTrades(plan: Plan): Trades | undefined {
    return trades.get(plan);
}

/** The machine's time (s) with other settings of the area: marks, outline and bringing the focus down stay as they are planned. */
function timer(
    { recipe }: Plan,
    laser: LaserPlan,
    size: Parameters<typeof machineWork>[1],
    memo: Memo,
): (settings: LaserSettings) => number {
    const [own] = burningsOf(laser, recipe.laser);
    const { region, pictures = [], scanAngle, step } = own!;
    const dots = pictures.map(({ grid }) => memo.keyOf(grid));
    const place = contentKey(memo.keyOf(region), dots, scanAngle, size, recipe.laser, (step as Engrave).scan?.bothWays);
    const area = (settings: LaserSettings): number => {
        const { speed, pitch, passes } = settings;
        const alone = { ...own!, focus: undefined, outlinePasses: 0, outline: undefined, settings };
        return memo.get('trade-time', contentKey(place, speed, pitch, passes), () => machineWork([alone], size, memo).machine);
    };
    const rest = laser.machine - area(laser.settings!);
    return (settings) => rest + area(settings);
}
