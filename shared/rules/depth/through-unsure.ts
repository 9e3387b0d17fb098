import type { Breakthrough, LaserPlan, LaserSettings } from '../../plan/laser-plan';
import { showSure } from '../../plan/through-words';
import { showLength } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Cut, Engrave } from '../../recipe/step';
import { atItsWord, type Figures } from '../figures';
import { solveAnew } from '../helpers/ask-depth';
import { blankOf, materialName } from '../helpers/blank-names';
import { settingsHeld } from '../helpers/settings-held';
import { settleBySquare } from '../helpers/settle-by-square';
import { settingsOf, squareOf } from '../helpers/square-of';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';
import { lacksFloor } from './pocket-without-floor';

const page: Page = {
    id: 'through-unsure',
    title: 'Through in the middle, but not surely',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition:
        'A burn or cut that is to go through reaches the back half of the time, but not as surely as is asked (97.5 % where nothing is written) where the sheet is thickest: settings or machine hold it back, or squares and cut tests leave it so open that being sure would take more than 1.5 times the dose.',
    why: 'A skin of veneer stays here and there. Turned over it lies on the board and holds the half out of its pocket; a part that is not cut free tears when it is broken out.',
    mend: 'Take the settings out, so that they are worked out again; or burn one more square with these settings on an offcut of the same sheet, or one more cut, and write down what came of it.',
    source: 'The interval of the depth law for one more place, its lower end at the probability asked, against the thick end of the sheet; for cuts the probability fitted to the cut tests. The limit of 1.5 times is our own.',
};

export const throughUnsure: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const stepPlan of plan.steps) {
            const { step, laser } = stepPlan;
            const { breakthrough, settings } = laser ?? {};
            if (
                (step.kind !== 'engrave' && step.kind !== 'cut') ||
                laser === undefined ||
                settings === undefined ||
                breakthrough === undefined
            )
                continue;
            // A guess is told by no-coupon and no-cut-test, what does not come through at all by the rules of what is out of reach.
            if (breakthrough.certain || settings.guess || breakthrough.spare < 0) continue;
            if (step.kind === 'engrave' && lacksFloor(plan, step)) continue; // pocket-without-floor says it
            const blank = blankOf(plan, stepPlan);
            const on = blank === undefined ? phrase`an offcut` : phrase`an offcut of ${materialName(blank)}`;
            const { asked, surely, thickest } = breakthrough;
            const settled = settleBySquare(plan, laser);
            const wayOut = settingsHeld(step)
                ? phrase`: let them be worked out again.${settled.words}`
                : settled.words === ''
                  ? phrase`: ${trialOf(step, settings, on)}.`
                  : phrase`.${settled.words}`;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${step.name} comes through more often than not, but only ${showLength(surely)} of ${showLength(thickest)} is ${showSure(asked)} sure${causeOf(laser, settings, breakthrough)}${wayOut}`,
                where: step.kind === 'engrave' ? (step.depth?.where ?? step.where) : step.where,
                step: step.index,
                fixes: [...held(laser, figures), ...settled.fixes],
            });
        }
    },
};

function trialOf({ kind }: Engrave | Cut, settings: LaserSettings, on: string): string {
    if (kind === 'engrave') return phrase`burn ${squareOf(settings)} on ${on} and write down its depth`;
    return phrase`cut a line with ${settingsOf(settings)} on ${on} and write down whether it came through`;
}

function causeOf({ step }: LaserPlan, settings: LaserSettings, { asked }: Breakthrough): string {
    if (settingsHeld(step)) return phrase` with the settings that are written`;
    if (settings.limits.includes('unsure'))
        return phrase`; so little was tried that ${showSure(asked)} would take 1.5 times the dose`;
    return phrase`; the machine has no more to give`;
}

function held({ step }: LaserPlan, figures: Figures): Fix[] {
    return settingsHeld(step) ? solveAnew(page.id, step, figures) : [];
}
