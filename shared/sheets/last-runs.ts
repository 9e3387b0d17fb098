import { powerWords } from '../burn/drift-words';
import { pocketWords } from '../burn/run-words';
import type { Plan } from '../plan/plan';

/** What runs say of one board or veneer on the laser, for paper. */
export interface LastRuns {
    /** Where, and what power all runs say is there. */
    readonly head: string;
    /** The latest, from the oldest to the newest. */
    readonly runs: readonly string[];
}

/** How the last runs came out on each board and veneer of a plan on which something was measured. */
export function lastRuns({ boards }: Plan): LastRuns[] {
    return boards
        .filter(({ latest }) => latest.length > 0)
        .map((board) => ({
            head: `${board.sheet} on ${board.laser}: ${powerWords(board)}`,
            runs: board.latest.map(
                (told) => `${told.pocket.date}, ${told.pocket.step} of ${told.pocket.recipe}: ${pocketWords(told)}`,
            ),
        }));
}
