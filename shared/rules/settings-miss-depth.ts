import { showLength, showLengthInterval, showNumber } from '../quantity/show';
import type { Page } from './page';
import { finding, type Rule } from './rule';
import { settingsHeld } from './settings-held';

const page: Page = {
    id: 'settings-miss-depth',
    title: 'Settings that do not give the depth',
    condition: 'Power, speed and passes are all written, and by the coupon they give another depth than the one asked for.',
    why: 'Pinned settings were right once; then the coupon, the board, the laser or the depth changed. What is burnt is what the settings say.',
    mend: 'Take one of the settings out and let it be worked out anew, or ask for the depth that they give.',
    source: 'The depth law, fitted to the coupon: d = (F − F₀)/q for each pass, with F = P/(v · pitch).',
};

export const settingsMissDepth: Rule = {
    page,
    *examine(plan) {
        for (const { step, laser } of plan.steps) {
            const settings = laser?.settings;
            if (step.kind !== 'engrave' || settings === undefined || settings.reached || settings.guess) continue;
            if (step.depth === undefined || 'through' in step.depth || !settingsHeld(step)) continue;
            const given = `${showNumber(settings.gives.value, 2)} mm`;
            yield finding(page, {
                severity: 'warning',
                message: `These settings give ${showLengthInterval(settings.gives)}, not ${showLength(step.depth.value)}.`,
                where: step.depth.where,
                step: step.index,
                related: [
                    { message: 'The power is held here.', where: step.power!.where },
                    { message: 'The speed is held here.', where: step.speed!.where },
                ],
                fixes: [{ title: `Ask for ${given}`, changes: [{ do: 'replace', where: step.depth.where, text: given }] }],
            });
        }
    },
};
