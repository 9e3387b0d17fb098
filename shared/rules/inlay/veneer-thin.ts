import { hair } from '../../piece/column';
import type { InlayPlan, Plan } from '../../plan/plan';
import { rootSumSquare } from '../../quantity/interval';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Engrave, Sand } from '../../recipe/step';
import { atItsWord } from '../figures';
import { askDepth, depthUnit, roundLength } from '../helpers/ask-depth';
import { halfNoun } from '../helpers/half-noun';
import { sandLess } from '../helpers/sanding-off';
import { commonPractice, type Page } from '../page';
import { skinOf } from '../piece/skin-left';
import { finding, type Rule } from '../rule';

/** Least veneer that should be left, mm. @commonPractice */
export const leastLeft = 0.2;

const page: Page = {
    id: 'veneer-thin',
    title: 'Veneer left too thin',
    severities: ['warning', 'error'],
    quickFix: 'sometimes',
    condition: `After all sanding the veneer in the pocket is likely thinner than ${leastLeft} mm, or may be gone at worst.`,
    error: 'What the sanding takes is expected to be all of the veneer.',
    why: 'Glue shines through, and the next stroke of the sander opens a hole.',
    mend: 'Engrave the pocket deeper, sand less below flush, or use a thicker veneer.',
    source: `${commonPractice} What is left is depth − glue film − what is sanded below flush.`,
};

export const veneerThin: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, inlay } of plan.steps) {
            if (inlay?.stack === undefined || inlay.pocketLaser.through || inlay.pocket.kind === 'cut') continue;
            const { pocket } = inlay;
            if (skinOf(inlay) !== undefined) continue; // skin-left says it
            const { likely, worst } = inlay.stack.left;
            if (likely.low >= leastLeft || (likely.value >= leastLeft && worst.low > 0)) continue;
            const sand = sandedTooFar(plan, step.index, inlay);
            const take = sand?.take;
            const missing = missingOf(inlay);
            const deep = deeperFor(inlay, pocket, missing);
            const less = sand === undefined ? [] : sandLess(page.id, sand, missing, figures);
            const { text, fixes, instead } = askDepth(page.id, pocket, deep, plan, figures);
            const mend =
                text !== undefined
                    ? phrase`; a pocket of ${text} would leave enough`
                    : less.length > 0
                      ? phrase`; sand less below flush`
                      : phrase`; it takes a thicker veneer, or less sanding`;
            yield finding(page, {
                severity: likely.value <= 0 ? 'error' : 'warning',
                message:
                    likely.value <= 0
                        ? phrase`Nothing is left of the ${halfNoun(inlay)} in ${inlay.pocket.name} after sanding, which takes ${showLength(inlay.below.value)} off the face${mend}.${instead}`
                        : phrase`After sanding ${showLength(likely.value)} of ${halfNoun(inlay)} is left in ${inlay.pocket.name}, likely ${showLength(likely.low)} to ${showLength(likely.high)}, ${showLength(worst.low)} at worst; ${showLength(leastLeft)} should stay${mend}.${instead}`,
                where: take?.where ?? pocket.depth?.where ?? pocket.where,
                step: sand?.index ?? inlay.pocket.index,
                fixes: [...fixes, ...less],
                related:
                    pocket.depth === undefined
                        ? []
                        : [{ message: phrase`The pocket’s depth is asked for here.`, where: pocket.depth.where }],
            });
        }
    },
};

/** The sanding after an inlay by which too little of it is left, or nothing; the last of those that take something off where sums differ. */
function sandedTooFar(plan: Plan, laid: number, { pocketLaser, stack, below }: InlayPlan): Sand | undefined {
    const { likely } = stack!.left;
    const [before, least] = likely.value <= 0 ? [likely.value, hair] : [likely.low, leastLeft];
    let left = before + below.value;
    let last: Sand | undefined;
    for (const { step, blank } of plan.steps) {
        if (step.kind !== 'sand' || step.index < laid || blank !== pocketLaser.blank || step.take === undefined) continue;
        left -= step.take.value;
        last = step;
        if (left < least) break;
    }
    return last;
}

/** What more would have to be left for the likely range to keep to the least, mm. */
function missingOf({ pocketLaser, film, below }: InlayPlan): number {
    const { depth } = pocketLaser;
    if (depth === undefined) return 0;
    const left = rootSumSquare([
        { of: depth, sign: 1 },
        { of: film, sign: -1 },
        { of: below, sign: -1 },
    ]);
    return leastLeft - left.low;
}

/** A deeper pocket leaves more of the veneer, until its face would lie below the sanded one. */
function deeperFor({ pocketLaser, veneer, film, below }: InlayPlan, pocket: Engrave, missing: number): number | undefined {
    if (pocketLaser.depth === undefined || veneer === undefined) return undefined;
    const deep = roundLength(pocketLaser.depth.value + missing, depthUnit(pocket), 'up');
    return deep <= veneer.value + film.value + below.value ? deep : undefined;
}
