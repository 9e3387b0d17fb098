import type { WeekAsked } from '../../shared/week/make-week';
import type { WeekJob } from '../engine/jobs';
import type { PlacedRecipe } from '../review/table-jobs';

/** All recipes in one book, each for the pieces that it makes. */
export function weekJob(known: readonly PlacedRecipe[], asked: WeekAsked): WeekJob {
    return { do: 'week', ...asked, entries: known.map(({ recipe }) => ({ recipe })) };
}
