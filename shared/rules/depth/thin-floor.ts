import type { Plan } from '../../plan/plan';
import { add, exactly, subtract } from '../../quantity/interval';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { atItsWord } from '../figures';
import { askDepth, isSaidAs } from '../helpers/ask-depth';
import { blankOf } from '../helpers/blank-names';
import { edgeOver } from '../helpers/edge-over';
import { deepestWithFloor, leastFloor } from '../helpers/floor';
import { settleBySquare } from '../helpers/settle-by-square';
import { commonPractice, type Page } from '../page';
import { isTooDeepInSum } from '../piece/depth-in-sum';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'thin-floor',
    title: 'Floor left too thin',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: `Less than ${leastFloor} mm of wood is left under a pocket, with depth and thickness at the bad end of their tolerances; or nothing, where a fill or an inlay goes into a veneer that lies on no board.`,
    why: 'A floor like paper cups when the glue or resin shrinks, shows through, and breaks under a thumb.',
    mend: 'Engrave less deep or take a thicker board; a veneer is laid on its board first. Where it is the outline that digs deeper than the rest, since the laser holds no less power, leave the outline out.',
    source: commonPractice,
};

export const thinFloor: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const stepPlan of plan.steps) {
            const { laser, step } = stepPlan;
            if (step.kind !== 'engrave' || laser?.depth === undefined || laser.through || laser.tone !== undefined) continue;
            const blank = blankOf(plan, stepPlan);
            if (blank?.thickness === undefined) continue;
            const isVeneer = blank.blank.sheet?.kind === 'veneer';
            if (isVeneer && !isHollow(plan, step)) continue; // what is burnt away around a half leaves no floor
            const least = isVeneer ? 0 : leastFloor;
            if (laser.depth.value > blank.thickness.low) continue; // deeper-than-blank says it
            const over = edgeOver(laser);
            const deepest = add(laser.depth, exactly(over));
            const floor = subtract(blank.thickness, deepest);
            if (isVeneer ? floor.low > 0 : floor.low >= least) continue;
            if (isTooDeepInSum(plan, stepPlan)) continue; // depth-in-sum says how little is left
            const most = deepestWithFloor(step, { ...deepest, value: laser.depth.value }, blank.thickness, least);
            const { text, fixes, instead } = askDepth(page.id, step, most, plan, figures);
            const atMost = isSaidAs(most, step, text) ? phrase`at most ` : '';
            const depths = `${text === undefined ? '' : phrase`, so engrave ${atMost}${text} deep`}.${instead}`;
            // Thick enough by half of all burns: then it is the range that is at fault.
            const settled = floor.value >= least ? settleBySquare(plan, laser) : { words: '', fixes: [] };
            const should = isVeneer
                ? phrase`of the veneer is left, and at worst the beam comes through`
                : phrase`of wood is left, ${showLength(Math.max(0, floor.low))} at worst; ${showLength(least)} should stay`;
            yield finding(page, {
                severity: 'warning',
                message: phrase`Under ${over > 0 ? phrase`the outline of ` : ''}${step.name} only ${showLength(floor.value)} ${should}${depths}${settled.words}`,
                where: step.depth !== undefined ? step.depth.where : step.where,
                step: step.index,
                fixes: [...fixes, ...settled.fixes],
            });
        }
    },
};

/** Whether something is to stand in what a step burns. */
function isHollow({ steps }: Plan, { index }: Step): boolean {
    return steps.some(({ fill, inlay }) => fill?.pocket.index === index || inlay?.pocket.index === index);
}
