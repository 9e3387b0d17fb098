import { showArea } from '../quantity/show';
import { oneLine } from './one-line';
import type { ArtReview, Review, Status, StepReview } from './review';

/** What every form of a review says in the same words. */
export function headline({ before, after }: Review): string {
    const name = after.recipe ?? before.recipe ?? '';
    const renamed = before.recipe !== undefined && after.recipe !== undefined && before.recipe !== after.recipe;
    const what = before.recipe === undefined ? ' is new' : after.recipe === undefined ? ' is gone' : '';
    return oneLine(`${renamed ? `${before.recipe} → ` : ''}${name}${what}: ${before.from} → ${after.from}`);
}

export function signOf(status: Status): string {
    return { added: '+', removed: '-', changed: '~', same: ' ' }[status];
}

/** How a step, or whatever else has changed, is marked: with nothing where it is the same. */
export function marked(status: Status, title: string): string {
    return status === 'same' ? title : `${signOf(status)} ${title}`;
}

/** Nothing to be said of a step. */
export function isQuiet({ status, moved }: StepReview): boolean {
    return status === 'same' && !moved;
}

export function artLine({ gained, lost, kept }: ArtReview): string {
    const changed = gained + lost;
    const share = kept + lost > 0 && changed > 0 ? `, ${Math.round((100 * changed) / (kept + lost))} % of what burnt before` : '';
    return `${showArea(changed)} changed (${showArea(gained)} burn now, ${showArea(lost)} no longer${share})`;
}
