import { missingBasis, throughWide } from '../../plan/through-words';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { blankOf, materialName } from '../helpers/blank-names';
import { settingsHeld } from '../helpers/settings-held';
import { settingsOf } from '../helpers/square-of';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'cut-unreachable',
    title: 'A board that this laser will hardly cut',
    severities: ['warning'],
    condition:
        'No settings that are still sensible (2 mm/s, eight passes, or what is written of them) come through a cut’s board more often than not.',
    why: 'The kerf gets longer than the beam stays narrow: the wood chars and glows instead of parting, the part stays in the board, and a slow cut that does not come through is how fires begin.',
    mend: 'Saw or rout it; take a thinner board or a stronger laser. If you have cut this board before, write a cut test into its coupon.',
    source: 'By the cut tests of the coupon; without any, an own estimate from power, spot, depth of focus, thickness and density.',
};

export const cutUnreachable: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { step, laser } = stepPlan;
            const { settings, breakthrough } = laser ?? {};
            if (step.kind !== 'cut' || settings === undefined || settings.reached || breakthrough === undefined) continue;
            if (settingsHeld(step)) continue; // settings-miss-depth says it
            const blank = blankOf(plan, stepPlan);
            const board = `${showLength(breakthrough.thickest)}${blank === undefined ? '' : phrase` of ${materialName(blank)}`}`;
            const never = settings.gives.high < breakthrough.thickest;
            const guess = settings.guess ? phrase` (a guess: ${missingBasis(step)})` : '';
            yield finding(page, {
                severity: 'warning',
                message: phrase`${plan.recipe.laser?.name ?? phrase`This laser`} will ${never ? 'not' : 'hardly'} cut ${board}: ${settingsOf(settings)} comes through ${throughWide(settings.gives)}${guess}. Saw it, or take a thinner board.`,
                where: step.where,
                step: step.index,
            });
        }
    },
};
