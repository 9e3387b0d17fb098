import type { LaserPlan } from '../../plan/laser-plan';
import type { Plan } from '../../plan/plan';
import { exactly, type Interval } from '../../quantity/interval';
import type { Engrave } from '../../recipe/step';
import { depthUnit, roundLength } from './ask-depth';
import { deepestWithFloor } from './floor';

/** Least depth in which a fill holds, mm. @commonPractice */
export const leastFillDepth = 0.3;
/** Least fill that should be left after sanding, mm. @commonPractice */
export const leastFillLeft = 0.2;

/** Part of a depth that is surely reached where none was asked for before, with a coupon and by the guess from density: own judgement. */
const untried = { measured: 0.75, guessed: 0.45 } as const;

/**
 * The least depth on a round figure, mm, in which a fill holds and of which enough is left after all sanding, at the bad end
 * of its tolerance. Undefined where the board is too thin for it, or nothing can be said of the depth.
 */
export function depthForFill(plan: Plan, pocket: Engrave, { blank: name, depth, settings }: LaserPlan): number | undefined {
    const sanded = plan.steps.reduce(
        (sum, { step, blank, sand }) => sum + (step.index > pocket.index && blank === name ? (sand?.below.high ?? 0) : 0),
        0,
    );
    const made = depth ?? exactly(0);
    const { thickness } = plan.blanks.find((candidate) => candidate.name === name) ?? {};
    const wanted = Math.max(leastFillDepth, sanded + leastFillLeft);
    const first = settings?.guess === false ? untried.measured : untried.guessed;
    const asked = made.value > 0 ? surelyReaching(wanted, made) : wanted / first;
    if (asked === undefined) return undefined;
    const needed = roundLength(asked, depthUnit(pocket), 'up');
    return thickness !== undefined && needed > (deepestWithFloor(pocket, floorDepth(made), thickness) ?? 0) ? undefined : needed;
}

/** A depth of nothing says nothing of how far it may be missed. */
function floorDepth(made: Interval): Interval {
    return made.value > 0 ? made : exactly(1);
}

/**
 * What to ask for, so that the wanted depth is surely reached. The part by which a depth may fall short grows with it, since
 * more passes add up what is not known of one: d - k d² = wanted, for k as it is now. Undefined where no depth is sure enough.
 */
function surelyReaching(wanted: number, made: Interval): number | undefined {
    const k = (made.value - made.low) / made.value ** 2;
    const root = 1 - 4 * k * wanted;
    if (root < 0) return undefined;
    return (2 * wanted) / (1 + Math.sqrt(root));
}
