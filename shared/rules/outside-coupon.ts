import { doseOf } from '../burn/dose';
import { showNumber } from '../quantity/show';
import { blankOf, materialName } from './blank-names';
import type { Page } from './page';
import { finding, type Rule } from './rule';

const page: Page = {
    id: 'outside-coupon',
    title: 'Outside of what the coupon has measured',
    condition:
        'The dose of a pass lies more than 5 % below the least or above the most that the coupon’s squares were burnt with.',
    why: 'The depth is then read off the line beyond the last square. Char, smoke and fade bend it there, and nobody has measured how much.',
    mend: 'Burn one more square near these settings and add its `burn` line; or choose passes so that the dose lies between the squares.',
    source: 'The coupon’s own range.',
};

export const outsideCoupon: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { step, laser } = stepPlan;
            const settings = laser?.settings;
            if (step.kind !== 'engrave' || settings?.limits.includes('outside-coupon') !== true || settings.guess) continue;
            const blank = blankOf(plan, stepPlan);
            const coupon = plan.recipe.coupons.find(
                (candidate) => candidate.sheet === blank?.blank.sheet?.name && candidate.laser === plan.recipe.laser?.name,
            );
            yield finding(page, {
                severity: 'info',
                message: `${step.name} is burnt with ${showNumber(doseOf(settings), 2)} J/mm² a pass, which no square of the coupon${blank === undefined ? '' : ` on ${materialName(blank)}`} comes near: its depth is a reading beyond the line.`,
                where: step.depth?.where ?? step.where,
                step: step.index,
                related: coupon === undefined ? [] : [{ message: 'The coupon is here.', where: coupon.where }],
            });
        }
    },
};
