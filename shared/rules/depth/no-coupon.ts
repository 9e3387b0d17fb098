import type { LaserPlan } from '../../plan/laser-plan';
import { behindWords } from '../../plan/through-words';
import { showLengthInterval } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { blankOf, materialName } from '../helpers/blank-names';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'no-coupon',
    title: 'A guess, for want of a coupon',
    severities: ['info'],
    condition: 'A depth is worked out for a board or veneer of which no coupon has been burnt on this laser.',
    why: 'It is then guessed from the wood’s density, and may be off by half or twice.',
    mend: 'Burn a coupon on an offcut, measure its squares, and write them down in a `coupon` block.',
    source: 'Own estimate from density; see the explanation of the depth law.',
};

export const noCoupon: Rule = {
    page,
    *examine(plan) {
        const told = new Set<string>();
        for (const stepPlan of plan.steps) {
            const { step, laser } = stepPlan;
            const blank = blankOf(plan, stepPlan);
            if (step.kind !== 'engrave' || laser?.settings?.guess !== true || blank === undefined) continue;
            if (laser.tone !== undefined) continue;
            const material = materialName(blank);
            if (told.has(material)) continue;
            told.add(material);
            yield finding(page, {
                severity: 'info',
                message: phrase`No coupon of ${material} has been burnt on ${plan.recipe.laser?.name ?? phrase`this laser`}: ${showLengthInterval(laser.settings.gives)} is a guess from density.${throughToo(laser)}`,
                where: step.depth?.where ?? step.where,
                step: step.index,
            });
        }
    },
};

/** A guess is not burnt harder to be sure of it. */
function throughToo({ breakthrough }: LaserPlan): string {
    if (breakthrough === undefined) return '';
    return phrase` It may leave a skin, or burn far into ${behindWords(breakthrough.behind)}: burn a square first.`;
}
