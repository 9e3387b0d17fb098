import { add, exactly, subtract } from '../../quantity/interval';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
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
    condition: `Less than ${leastFloor} mm of wood is left under a pocket, with depth and thickness at the bad end of their tolerances.`,
    why: 'A floor like paper cups when the glue or resin shrinks, shows through, and breaks under a thumb.',
    mend: 'Engrave less deep or take a thicker board. Where it is the outline that digs deeper than the rest, since the laser holds no less power, leave the outline out.',
    source: commonPractice,
};

export const thinFloor: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const stepPlan of plan.steps) {
            const { laser, step } = stepPlan;
            if (step.kind !== 'engrave' || laser?.depth === undefined || laser.through || laser.tone !== undefined) continue;
            const blank = blankOf(plan, stepPlan);
            if (blank?.thickness === undefined || blank.blank.sheet?.kind === 'veneer') continue;
            if (laser.depth.value > blank.thickness.low) continue; // deeper-than-blank says it
            const over = edgeOver(laser);
            const deepest = add(laser.depth, exactly(over));
            const floor = subtract(blank.thickness, deepest);
            if (floor.low >= leastFloor) continue;
            if (isTooDeepInSum(plan, stepPlan)) continue; // depth-in-sum says how little is left
            const most = deepestWithFloor(step, { ...deepest, value: laser.depth.value }, blank.thickness);
            const { text, fixes, instead } = askDepth(page.id, step, most, plan, figures);
            const atMost = isSaidAs(most, step, text) ? phrase`at most ` : '';
            const depths = `${text === undefined ? '' : phrase`, so engrave ${atMost}${text} deep`}.${instead}`;
            // Thick enough by half of all burns: then it is the range that is at fault.
            const settled = floor.value >= leastFloor ? settleBySquare(plan, laser) : { words: '', fixes: [] };
            yield finding(page, {
                severity: 'warning',
                message: phrase`Under ${over > 0 ? phrase`the outline of ` : ''}${step.name} only ${showLength(floor.value)} of wood is left, ${showLength(Math.max(0, floor.low))} at worst; ${showLength(leastFloor)} should stay${depths}${settled.words}`,
                where: step.depth !== undefined ? step.depth.where : step.where,
                step: step.index,
                fixes: [...fixes, ...settled.fixes],
            });
        }
    },
};
