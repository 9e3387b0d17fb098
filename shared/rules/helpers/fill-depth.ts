import { coverageFactor } from '../../burn/distributions';
import type { LaserPlan } from '../../plan/laser-plan';
import type { Plan } from '../../plan/plan';
import { bracket } from '../../quantity/bracket';
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
        (sum, { step, face, sand }) =>
            sum + (step.index > pocket.index && face === plan.steps[pocket.index]?.face ? (sand?.below.high ?? 0) : 0),
        0,
    );
    const made = depth ?? exactly(0);
    const { thickness } = plan.blanks.find((candidate) => candidate.name === name) ?? {};
    const wanted = Math.max(leastFillDepth, sanded + leastFillLeft);
    const first = settings?.guess === false ? untried.measured : untried.guessed;
    const asked = made.value > 0 ? surelyReaching(wanted, made, shortOfBoards(settings)) : wanted / first;
    if (asked === undefined) return undefined;
    const needed = roundLength(asked, depthUnit(pocket), 'up');
    return thickness !== undefined && needed > (deepestWithFloor(pocket, floorDepth(made), thickness) ?? 0) ? undefined : needed;
}

/** Part of a depth by which boards that differ make a range wide. */
function shortOfBoards(settings: LaserPlan['settings']): number {
    const { share, pieces } = settings?.givesFor ?? {};
    return share === undefined || pieces === undefined ? 0 : coverageFactor(share, pieces.freedom) * pieces.sigma;
}

/** A depth of nothing says nothing of how far it may be missed. */
function floorDepth(made: Interval): Interval {
    return made.value > 0 ? made : exactly(1);
}

/**
 * What to ask for, so that the wanted depth is surely reached. What another board falls short by is a part of the depth; the rest
 * grows with its square, since more passes add up what is not known of one. Where none is then sure enough, all of it is taken for
 * a part of the depth: whoever judges the figure looks again. Undefined where a depth may be missed altogether.
 */
function surelyReaching(wanted: number, made: Interval, boards: number): number | undefined {
    const short = made.value - made.low;
    const ofBoards = Math.min(boards * made.value, short);
    const k = Math.sqrt(short ** 2 - ofBoards ** 2) / made.value ** 2;
    const surely = (depth: number): number => depth - Math.hypot((ofBoards / made.value) * depth, k * depth ** 2);
    const highest = DEEPEST_ASKED * wanted;
    for (let depth = wanted; depth < highest; depth *= 1.25) {
        const next = 1.25 * depth;
        if (surely(next) >= wanted) return bracket(depth, next, (each) => surely(each) < wanted).first;
    }
    return made.low > 0 ? (wanted * made.value) / made.low : undefined;
}

/** As many times the wanted depth is the most that is asked for to be sure of it. */
const DEEPEST_ASKED = 3;
