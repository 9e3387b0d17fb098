import type { LaserPlan, LaserSettings } from '../../plan/laser-plan';
import type { Plan } from '../../plan/plan';
import { missingBasis } from '../../plan/through-words';
import { showLength, showLengthInterval, showRatio } from '../../quantity/show';
import type { Where } from '../../quantity/where';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import { atItsWord, type Figures } from '../figures';
import { askWhatIsGiven, solveAnew } from '../helpers/ask-depth';
import { settingsHeld } from '../helpers/settings-held';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'settings-miss-depth',
    title: 'Settings that do not give the depth',
    severities: ['warning', 'info', 'error'],
    quickFix: 'sometimes',
    condition:
        'Power, speed and passes are all written, and by the coupon they give another depth or tone than the one asked for, or do not come through. Where there is no coupon it is said only of what even the guess rules out.',
    error: 'By the coupon, the depth that was asked for lies outside the range in which these settings are expected to come out, or even the deep end of it does not come through. Where it lies within, and of a tone, it is a warning.',
    why: 'Pinned settings were right once; then the coupon, the board, the laser or the depth changed. What is burnt is what the settings say.',
    mend: 'Take the settings out and let them be worked out again, or ask for the depth that they give.',
    source: 'The depth law, fitted to the coupon: d = (F − F₀)/q for each pass, with F = P/(v · pitch).',
};

export const settingsMissDepth: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, laser } of plan.steps) {
            const settings = laser?.settings;
            if (settings === undefined || laser === undefined || !settingsHeld(laser.step)) continue;
            const missed = laser.through ? missesThrough(laser, settings) : missesWish(plan, laser, settings, figures);
            if (missed === undefined) continue;
            const { power, speed } = laser.step;
            yield finding(page, {
                severity: settings.guess ? 'info' : missed.surely ? 'error' : 'warning',
                message: phrase`${missed.message}${settings.guess ? phrase` (a guess: ${missingBasis(laser.step)})` : ''}.`,
                where: missed.where,
                step: step.index,
                related: [
                    { message: phrase`The power is held here.`, where: power!.where },
                    { message: phrase`The speed is held here.`, where: speed!.where },
                ],
                fixes: [...solveAnew(page.id, laser.step, figures), ...(missed.fixes ?? [])],
            });
        }
    },
};

interface Missed {
    readonly message: string;
    readonly where: Where;
    /** Not even the range in which it is expected reaches what was asked for. */
    readonly surely?: boolean;
    readonly fixes?: readonly Fix[];
}

function missesWish(plan: Plan, { step }: LaserPlan, settings: LaserSettings, figures: Figures): Missed | undefined {
    if (step.kind !== 'engrave' || settings.reached) return undefined;
    const { gives, guess } = settings;
    if (step.depth === undefined) {
        if (step.tone === undefined || guess) return undefined;
        const instead = gives.value > 0.02 ? phrase`dig ${showLengthInterval(gives)} deep and do` : 'do';
        return {
            message: phrase`These settings ${instead} not give a tone of ${showRatio(step.tone.value)}`,
            where: step.tone.where,
        };
    }
    if ('through' in step.depth) return undefined;
    const { value, where, unit } = step.depth;
    if (guess && value >= gives.low && value <= gives.high) return undefined;
    return {
        message: phrase`These settings give ${showLengthInterval(gives, unit)}, not ${showLength(value, unit)}`,
        where,
        surely: value < gives.low || value > gives.high,
        fixes: gives.value > 0.005 && !guess ? askWhatIsGiven(page.id, step, gives.value, plan, figures) : [],
    };
}

/** Of a guess only what falls short at its best is said. */
function missesThrough({ step, depth }: LaserPlan, { gives, guess }: LaserSettings): Missed | undefined {
    if (depth === undefined) return undefined;
    const reach = guess ? gives.high : gives.value;
    if (reach >= depth.value) return undefined;
    return {
        message: phrase`These settings go ${showLengthInterval(gives)} deep, not through ${showLength(depth.value)}`,
        where: step.kind === 'engrave' && step.depth !== undefined ? step.depth.where : step.where,
        surely: gives.high < depth.value,
    };
}
