import { doseOf } from '../../burn/dose';
import type { LaserSettings } from '../../plan/laser-plan';
import { showLength, showNumber, showRatio } from '../../quantity/show';
import { type Message, phrase } from '../../recipe/phrase';
import type { Engrave } from '../../recipe/step';
import { blankOf, materialName } from '../helpers/blank-names';
import { settleBySquare } from '../helpers/settle-by-square';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'outside-coupon',
    title: 'Outside of what the coupon has measured',
    severities: ['info'],
    quickFix: 'sometimes',
    condition:
        'The dose of a pass lies more than 5 % below the least or above the most that the coupon’s squares were burnt with, or a tone is asked for that is more than 5 % darker than the darkest judged square, or with lines more than a third closer or wider than those of the judged squares.',
    why: 'The depth is then read off the line beyond the last square. Char, smoke and fade bend it there, and nobody has measured how much.',
    mend: 'Burn the square that is named (of those near these settings the one that narrows the range most) and write down its depth: the fix adds its open row to the coupon. Or choose passes so that the dose lies between the squares.',
    source: 'The coupon’s own range.',
};

export const outsideCoupon: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { step, laser } = stepPlan;
            const settings = laser?.settings;
            if (step.kind !== 'engrave' || laser === undefined || settings === undefined) continue;
            const blank = blankOf(plan, stepPlan);
            const coupon = plan.recipe.coupons.find(
                (candidate) => candidate.sheet === blank?.blank.sheet?.name && candidate.laser === plan.recipe.laser?.name,
            );
            const on = blank === undefined ? '' : phrase` on ${materialName(blank)}`;
            const beyond = laser.tone === undefined ? areaBeyond(step, settings, on) : toneBeyond(step, settings, on);
            if (beyond === undefined) continue;
            const { words, fixes } = laser.tone === undefined ? settleBySquare(plan, laser) : { words: '', fixes: [] };
            const near = laser.tone !== undefined ? '' : words === '' ? phrase` Burn one more square near that dose.` : words;
            yield finding(page, {
                severity: 'info',
                message: phrase`${beyond}${near}`,
                fixes,
                where: step.depth?.where ?? step.tone?.where ?? step.where,
                step: step.index,
                related: coupon === undefined ? [] : [{ message: phrase`The coupon is here.`, where: coupon.where }],
            });
        }
    },
};

function areaBeyond({ name }: Engrave, settings: LaserSettings, on: string): Message | undefined {
    if (settings.guess || !settings.limits.includes('outside-coupon') || settings.measuredDoses === undefined) return undefined;
    const { low, high } = settings.measuredDoses;
    const measured = low === high ? showNumber(low, 2) : phrase`${showNumber(low, 2)} to ${showNumber(high, 2)}`;
    return phrase`${name} is burnt with ${showNumber(doseOf(settings), 2)} J/mm² a pass, and the squares of the coupon${on} with ${measured} J/mm²: its depth is a reading beyond the line.`;
}

function toneBeyond(
    { name, tone }: Engrave,
    { darkestJudged, judgedPitch, pitch }: LaserSettings,
    on: string,
): Message | undefined {
    if (tone === undefined) return undefined;
    if (darkestJudged !== undefined)
        return phrase`${name} asks for a tone of ${showRatio(tone.value)}, and no square of the coupon${on} was judged darker than ${showRatio(darkestJudged)}: beyond it wood may dig, or get paler again. Judge one more square, or ask for a lighter tone.`;
    if (judgedPitch === undefined || Math.abs(Math.log(pitch / judgedPitch)) <= Math.log(4 / 3) + 1e-9) return undefined;
    return phrase`${name} is burnt in lines of ${showLength(pitch)}, and the squares of the coupon${on} were judged in lines of ${showLength(judgedPitch)}: the same dose looks otherwise there. Judge a square with this pitch, or leave \`pitch\` out.`;
}
