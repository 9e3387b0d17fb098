import type { BoardRuns } from '../../burn/board-runs';
import { driftWords } from '../../burn/drift-words';
import { phrase } from '../../recipe/phrase';
import { boardOf, engravings } from '../helpers/newest-run';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'power-drifts',
    title: 'A laser that is no longer what it was',
    severities: ['info'],
    condition:
        'The depths of runs on a board or veneer, since its coupon was burnt, the laser was serviced or the wood was bought, say that the power has changed more than chance would have it. Said in the recipe of the newest run, once for its laser. That pockets come out otherwise than squares all along is no drift.',
    why: 'A tube ages, a lens fogs, a mirror slips. The plan follows what was measured, so depths stay right; but what it takes for it changes, and one day the depth is out of reach.',
    mend: 'Clean lens and mirrors and look at the focus. Write the day as `serviced` into the laser’s block, and burn a new coupon: `kerfbook coupon BOARD LASER`.',
    source: 'A control chart of exponentially weighted means over each day of runs against those before it (NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4). Where nothing changes, fewer than 5 in 100 workshops hear of a drift within 20 days of runs (own simulation, `npm run simulate`).',
};

export const powerDrifts: Rule = {
    page,
    *examine(plan) {
        const told = engravings(plan).flatMap(({ step, stepPlan }) => {
            const board = boardOf(plan, stepPlan);
            return board !== undefined && isSaidHere(board, plan.recipe.name) ? [{ step, board }] : [];
        });
        const [most] = told.toSorted((a, b) => b.board.drift.days.length - a.board.drift.days.length);
        const drift = most?.board.drift.told;
        if (most === undefined || drift === undefined) return;
        const { step, board } = most;
        const newest = board.latest.at(-1)!.pocket;
        yield finding(page, {
            severity: 'info',
            message: phrase`${board.laser} in ${board.sheet}: ${driftWords(drift)}. Depths are planned with it; clean lens and mirrors, write the day as serviced into ${board.laser}, and burn a new coupon.`,
            where: step.depth?.where ?? step.where,
            step: step.index,
            related: [{ message: phrase`The newest run is here.`, where: newest.where }],
        });
    },
};

/** One laser serves many recipes: it is said where it was measured last. */
function isSaidHere({ drift, latest }: BoardRuns, recipe: string): boolean {
    return drift.told !== undefined && latest.at(-1)?.pocket.recipe === recipe;
}
