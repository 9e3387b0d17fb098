import type { Change } from './change';
import { isSame } from './compare-plans';
import type { ArtReview, Review, StepReview } from './review';

/** Times that differ by no more than this are worked out, not made, s. */
const leastTime = 2;
/** Less than this part of a sum is a matter of cents. */
const leastMoney = 0.005;

/**
 * A review as people read it, without what says nothing: pinned settings that are what solving would give, sums that differ by cents, times by
 * two seconds, art that lies in another folder and burns the same. `same` and the steps' `status` go by what is left.
 */
export function withoutNoise(review: Review): Review {
    const told = {
        ...review,
        steps: review.steps.map(quieter),
        art: review.art.filter((art) => !isOnlyMoved(art)),
        times: review.times.filter(isTold),
        run: review.run.filter(isTold),
        cost: review.cost.filter(isTold),
        pinned: { ...review.pinned, after: review.pinned.after.filter(({ written, solved }) => written !== solved) },
    };
    return { ...told, same: review.same || (hasBoth(review) && isSame(told)) };
}

function hasBoth({ before, after }: Review): boolean {
    return before.recipe !== undefined && after.recipe !== undefined;
}

function quieter(step: StepReview): StepReview {
    const follows = step.follows.filter(isTold);
    const isQuiet = step.status === 'changed' && step.settings.length + follows.length === 0;
    return { ...step, follows, status: isQuiet ? 'same' : step.status };
}

function isTold({ amounts }: Change): boolean {
    const [was, is] = [amounts?.before, amounts?.after];
    if (was === undefined || is === undefined || was.dimension !== is.dimension) return true;
    const by = Math.abs(is.value - was.value);
    if (is.dimension === 'time') return by > leastTime;
    return is.dimension !== 'money' || by > leastMoney * Math.max(Math.abs(was.value), Math.abs(is.value));
}

function isOnlyMoved({ status, changes, gained, lost }: ArtReview): boolean {
    return status === 'changed' && gained + lost < leastArt && changes.every(({ label }) => label === 'file');
}

/** Less than this of a drawing is rounding of the grid, mm2. */
const leastArt = 0.01;
