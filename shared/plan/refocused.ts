import { FOCUS_BY_HAND, focusHeightsOf } from '../toolpath/focus';
import type { Memo } from './memo';
import type { Plan, StepPlan } from './plan';
import { setUps } from './set-ups';
import { burningsOf, toolpaths } from './toolpaths';

/**
 * Steps with the time for bringing the focus back to the face by hand, where the step before in the same file of the machine leaves it
 * in the wood. A step by itself begins on the face; that somebody brings it back behind the last one is no time of the machine.
 */
export function withRefocusing(worked: Pick<Plan, 'recipe' | 'blanks' | 'steps'>, memo: Memo): StepPlan[] {
    const { recipe, steps } = worked;
    const { laser: machine } = recipe;
    if (machine?.focus?.value !== 'by-hand' || !steps.some(({ laser }) => laser?.focus !== undefined)) return [...steps];
    const more = new Map<number, number>();
    for (const { lasers } of setUps(worked)) {
        const works = lasers.map((laser) =>
            burningsOf(laser, machine)
                .filter(({ settings }) => settings !== undefined)
                .flatMap((burning) => toolpaths(burning, memo)),
        );
        for (let at = 1; at < lasers.length; at++) {
            const own = works[at]!;
            const before = works.slice(0, at).flat();
            const stops = stopsOf([...before, ...own]) - stopsOf(before) - stopsOf(own);
            if (stops > 0) more.set(lasers[at]!.step.index, stops * FOCUS_BY_HAND);
        }
    }
    return steps.map((plan) => {
        const { step, laser, times } = plan;
        const time = more.get(step.index);
        if (time === undefined || laser === undefined) return plan;
        return {
            ...plan,
            laser: { ...laser, machine: laser.machine + time },
            times: { ...times, machine: times.machine + time },
        };
    });
}

function stopsOf(work: Parameters<typeof focusHeightsOf>[0]['work']): number {
    return focusHeightsOf({ work }).length - 1;
}
