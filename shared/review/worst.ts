import { type Consequence, consequencesOf } from './consequences';
import type { Review } from './review';

/** What a review of one recipe begins with: its worst consequences. */
export interface Worst {
    readonly shown: readonly Consequence[];
    readonly more: number;
}

/** More lines than these are no head. */
const most = 5;
/** A line that was written otherwise stands in the review itself; so does what is told beside it. */
const leastWeight = 25;

export function worstOf(review: Review): Worst {
    const told = consequencesOf(review).filter(({ weight }) => weight >= leastWeight);
    return { shown: told.slice(0, most), more: Math.max(0, told.length - most) };
}
