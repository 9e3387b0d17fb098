import type { Plan, StepPlan } from '../plan/plan';
import { type Change, changesOf } from './change';
import type { DrawnParts } from './drawn-parts';
import { type Figure, word } from './figure';
import type { Match } from './match-steps';
import { outcomes } from './outcomes';
import type { StepReview } from './review';
import { shiftsOf } from './shifts';
import { writtenFigures } from './written';

/** What became of every step: one review a match, in the same order. */
export function compareSteps(before: Plan, after: Plan, matches: readonly Match[], drawn: DrawnParts | undefined): StepReview[] {
    return matches.map((match) => {
        const old = match.before === undefined ? undefined : before.steps[match.before];
        const now = match.after === undefined ? undefined : after.steps[match.after];
        return review(old && { step: old, plan: before }, now && { step: now, plan: after }, match, drawn);
    });
}

interface InPlan {
    readonly step: StepPlan;
    readonly plan: Plan;
}

function review(was: InPlan | undefined, is: InPlan | undefined, { moved }: Match, drawn: DrawnParts | undefined): StepReview {
    const [old, now] = [was?.step, is?.step];
    const settings = changesOf(old === undefined ? [] : written(old), now === undefined ? [] : written(now));
    const said = new Set(settings.map(spoken));
    const all = changesOf(followsFrom(was, drawn), followsFrom(is, drawn));
    // A wait that is written as 24 h need not be told again as what follows from itself.
    const follows = all.filter((change) => !said.has(spoken(change)));
    const shifts = was === undefined || is === undefined ? [] : shiftsOf(was.step, is.step, { before: was.plan, after: is.plan });
    const titleBefore = old !== undefined && now !== undefined && old.title !== now.title ? { titleBefore: old.title } : {};
    return {
        status:
            old === undefined
                ? 'added'
                : now === undefined
                  ? 'removed'
                  : settings.length + follows.length > 0
                    ? 'changed'
                    : 'same',
        title: (now ?? old)!.title,
        ...titleBefore,
        ...(old !== undefined && { before: old.step.index }),
        ...(now !== undefined && { after: now.step.index }),
        moved,
        settings,
        follows,
        ...(shifts.length > 0 && { shifts }),
    };
}

function followsFrom(one: InPlan | undefined, drawn: DrawnParts | undefined): Figure[] {
    return one === undefined ? [] : outcomes(one.step, one.plan, drawn);
}

function spoken({ before, after }: Change): string {
    return `${before} → ${after}`;
}

function written({ step }: StepPlan): Figure[] {
    const named = step.kind === 'engrave' || step.kind === 'cut' ? [word('name', step.name)] : [];
    return [...named, ...writtenFigures(step)];
}
