import { throughWide } from '../../plan/through-words';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { blankOf, materialName } from '../helpers/blank-names';
import { settingsHeld } from '../helpers/settings-held';
import { settingsOf } from '../helpers/square-of';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'no-cut-test',
    title: 'A cut that is a guess',
    severities: ['info'],
    condition:
        'The settings of a cut are worked out for a board or veneer of which no cut was tried on this laser, and even the guess leaves open whether it comes through. Of written settings nothing is said.',
    why: 'Beam, thickness and density tell the energy a cut takes only to about 2.4 times either way: it may leave a skin all along, or char the edges.',
    mend: 'Cut some short lines in an offcut, slower and slower until they come through, and write each into the coupon: `cut 95 % at 8 mm/s x 2 gives through`, `cut 95 % at 12 mm/s x 2 gives skin`.',
    source: 'Own estimate, set to southern pine as cut by McMillin & Harry, Forest Prod. J. 21(10):35-37, 1971; see `shared/burn/cut-energy.ts`.',
};

export const noCutTest: Rule = {
    page,
    *examine(plan) {
        const told = new Set<string>();
        for (const stepPlan of plan.steps) {
            const { step, laser } = stepPlan;
            const { settings, breakthrough } = laser ?? {};
            if (step.kind !== 'cut' || settings?.guess !== true || breakthrough === undefined || settingsHeld(step)) continue;
            if (breakthrough.certain || !settings.reached) continue; // cut-unreachable says it
            const blank = blankOf(plan, stepPlan);
            const material = blank === undefined ? phrase`this sheet` : materialName(blank);
            if (told.has(material)) continue;
            told.add(material);
            yield finding(page, {
                severity: 'info',
                message: phrase`No cut of ${material} was tried on ${plan.recipe.laser?.name ?? phrase`this laser`}: ${settingsOf(settings)} is a guess, and may come through ${throughWide(settings.gives)} where ${showLength(breakthrough.thickest)} is wanted. Try short lines in an offcut first.`,
                where: step.where,
                step: step.index,
            });
        }
    },
};
