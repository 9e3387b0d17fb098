import type { ToldPocket } from '../../burn/board-runs';
import type { Plan } from '../../plan/plan';
import type { Interval } from '../../quantity/interval';
import { showLength, showNumber, showSpeed } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { MeasuredPocket } from '../../recipe/run';
import { checkRange } from '../helpers/check-range';
import { boardOf, engravings, newestRun } from '../helpers/newest-run';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'run-outside-told',
    title: 'A run that nobody expected',
    severities: ['info'],
    condition:
        'The newest run on a board or veneer came out deeper or shallower than the range that was predicted for its settings: by the plan where the run keeps it, else by the coupon and the runs before it. Nothing is said where a drift of the power is found, where the depth misses its check, or where the range was a guess.',
    why: 'That happens to one run in twenty by chance. More often it is a slip of the gauge, a lens that fogged, or a board of another batch; then the next one comes out so, too.',
    mend: 'Measure again. If it holds, look at lens and focus and burn one square with the same settings on an offcut: where that comes out alike, burn a new coupon.',
    source: 'The interval of the depth law for one more square (95 %).',
};

export const runOutsideTold: Rule = {
    page,
    *examine(plan) {
        for (const { step, stepPlan } of engravings(plan)) {
            const board = boardOf(plan, stepPlan);
            const newest = board?.latest.at(-1)?.pocket;
            // Said where it was measured: other recipes on the board have no part in it.
            if (board === undefined || newest?.recipe !== plan.recipe.name || board.drift.told !== undefined) continue;
            const said = board.latest.findLast(
                ({ pocket }) => pocket.date === newest.date && pocket.recipe === newest.recipe && pocket.step === step.name,
            );
            const range = said && expected(said);
            if (said === undefined || range === undefined || missesCheck(plan, step.name)) continue;
            const { pocket } = said;
            if (pocket.depth >= range.low && pocket.depth <= range.high) continue;
            yield finding(page, {
                severity: 'info',
                message: phrase`${step.name} came out ${showLength(pocket.depth)} deep on ${pocket.date}; ${showLength(range.low)} to ${showLength(range.high)} was to be expected of its settings. Measure again; if it holds, look at lens and focus, and burn a square at ${settingsOf(pocket)} on an offcut.`,
                where: step.depth?.where ?? step.where,
                step: step.index,
                related: [{ message: phrase`It was measured here.`, where: pocket.where }],
            });
        }
    },
};

/** What was told of a pocket; undefined where it was a guess, or is not known. */
function expected({ told, guess }: ToldPocket): Interval | undefined {
    return guess === true ? undefined : told;
}

/** run-misses-check says it. */
function missesCheck(plan: Plan, name: string): boolean {
    return plan.steps.some((stepPlan) => {
        const { step: check } = stepPlan;
        if (check.kind !== 'check' || check.step.value !== name || check.depth === undefined) return false;
        const made = plan.steps.find(({ step }) => step.kind === 'engrave' && step.name === name);
        const measured = made && newestRun(plan, made, 'depth')?.burnt.depth;
        const { low, high } = checkRange(check.depth);
        return measured !== undefined && (measured.value < low - 1e-9 || measured.value > high + 1e-9);
    });
}

function settingsOf({ power, speed, passes }: MeasuredPocket): string {
    return phrase`${showNumber(power, 1)} W and ${showSpeed(speed)}${passes === 1 ? '' : ` x ${passes}`}`;
}
