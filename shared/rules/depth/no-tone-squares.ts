import type { LaserSettings } from '../../plan/laser-plan';
import { showNumber, showRatio } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { blankOf, materialName } from '../helpers/blank-names';
import { newestRun } from '../helpers/newest-run';
import { settingsHeld } from '../helpers/settings-held';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'no-tone-squares',
    title: 'A tone that is a guess',
    severities: ['info'],
    condition:
        'A tone is asked for on a board or veneer of which no square was judged by its tone on this laser. Nothing is said where all settings are written, or a run of this issue has judged how dark the step came out.',
    why: 'It is then taken as a part of the dose at which digging begins, which tells little of how dark wood gets below it: woods differ, and each has a darkest tone of its own.',
    mend: 'Burn a few squares that only colour on an offcut, judge each beside a grey scale, and write them into the coupon: `burn 10 % at 600 mm/s gives tone 45 %`. Three from pale to as dark as asked are enough to begin with.',
    source: 'Own estimate; see the explanation of the depth law.',
};

export const noToneSquares: Rule = {
    page,
    *examine(plan) {
        const told = new Set<string>();
        for (const stepPlan of plan.steps) {
            const { step, laser } = stepPlan;
            const settings = laser?.settings;
            const blank = blankOf(plan, stepPlan);
            if (step.kind !== 'engrave' || laser?.tone === undefined || blank === undefined) continue;
            if (settings === undefined || settings.givesTone !== undefined || settingsHeld(step)) continue;
            if (newestRun(plan, stepPlan, 'tone') !== undefined) continue;
            const material = materialName(blank);
            if (told.has(material)) continue;
            told.add(material);
            yield finding(page, {
                severity: 'info',
                message: phrase`No square of ${material} was judged by tone on ${plan.recipe.laser?.name ?? phrase`this laser`}: with what ${showRatio(laser.tone)} is burnt is a guess. Judge a square of \`${burnOf(settings)}\` and write down its tone.`,
                where: step.tone?.where ?? step.where,
                step: step.index,
            });
        }
    },
};

/** The line of a coupon that would settle it. */
function burnOf({ powerRatio, power, speed, passes }: LaserSettings): string {
    const strength = Number.isFinite(powerRatio) ? showRatio(powerRatio) : `${showNumber(power, 1)} W`;
    return phrase`burn ${strength} at ${showNumber(speed, 1)} mm/s${passes === 1 ? '' : ` x ${passes}`} gives tone`;
}
