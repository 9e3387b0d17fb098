import type { Interval } from '../quantity/interval';
import type { Engrave } from '../recipe/step';
import { contentKey } from './content-key';
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
}

/** More passes are not looked at, unless the step is planned with them. */
const MOST = 8;

/**
 * By how many passes a depth can be reached, and what each way costs: time, the range of the depth, char. What is written of power, speed or
 * pitch is kept. Undefined of what is no depth, of what power and speed are written for, and where fewer than two ways lead there.
 */
export function planTrade(plan: Plan, index: number, memo: Memo): readonly TradePoint[] | undefined {
    const burnt = burntOf(plan.steps[index]!);
    const blank = plan.blanks.find(({ name }) => name === burnt?.laser.blank);
    if (burnt === undefined || blank === undefined) return undefined;
    const { step, laser, settings } = burnt;
    const { passes: planned } = settings;
    const timeOf = timer(plan, laser, blank.size, memo);
    const ways = Array.from({ length: Math.max(MOST, planned) }, (_, at) => at + 1);
    const points = ways.flatMap((passes): TradePoint[] => {
        if (passes > MOST && passes !== planned) return [];
        const way = passes === planned ? settings : solveWithPasses(step, passes, blank, plan.recipe, memo);
        if (way === undefined || !way.reached) return [];
        const { power, speed, pitch, powerRatio = Number.NaN, limits } = way;
        const dose = power / (speed * pitch);
        const depth = 'gives' in way ? way.gives : way.depth;
        return [
            {
                passes,
                power,
                powerRatio,
                speed,
                dose,
                each: depth.value / passes,
                time: timeOf({ ...settings, power, speed, passes }),
                depth,
                chosen: passes === planned,
                measured: !limits.includes('outside-coupon'),
            },
        ];
    });
    return points.length < 2 ? undefined : points;
}

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

/** Every trade of a plan, by the index of its step. */
export function allTrades(plan: Plan, memo: Memo): ReadonlyMap<number, readonly TradePoint[]> {
    const all = new Map<number, readonly TradePoint[]>();
    for (const index of plan.steps.keys()) {
        const trade = planTrade(plan, index, memo);
        if (trade !== undefined) all.set(index, trade);
    }
    return all;
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
