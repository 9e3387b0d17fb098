import { spotOf } from '../../burn/beam';
import { pitchForSpot } from '../../burn/pitch';
import { showLength, showTime } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { atItsWord } from '../figures';
import { askPitch } from '../helpers/ask-pitch';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** A written pitch below this part of the one that already hides the lines only costs time. */
const needless = 0.5;
/** Time worth a word, s. */
const worth = 120;

const page: Page = {
    id: 'fine-pitch',
    title: 'Pitch finer than the spot can show',
    severities: ['hint'],
    quickFix: 'sometimes',
    condition:
        'A written pitch is less than half of the one at which the lines already disappear, and the machine runs minutes longer for it.',
    why: 'The spot covers several lines at once. More of them make no finer picture, only more char and a longer run.',
    mend: 'Scan with a wider pitch; the speed follows, so that the depth stays.',
    source: commonPractice,
};

export const finePitch: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        const spot = spotOf(plan.recipe.laser);
        const enough = pitchForSpot(spot);
        if (spot === undefined || enough === undefined) return;
        for (const { step, laser } of plan.steps) {
            if (step.kind !== 'engrave' || laser === undefined || step.pitch === undefined) continue;
            const pitch = step.pitch.value;
            const saved = laser.machine * (1 - pitch / enough);
            if (!(pitch > 0) || pitch >= enough * needless || saved < worth) continue;
            yield finding(page, {
                severity: 'hint',
                message: phrase`A spot of ${showLength(spot.diameter)} hides its lines at ${showLength(enough)} already; a pitch of ${showLength(pitch)} runs the machine about ${showTime(saved)} longer.`,
                where: step.pitch.where,
                step: step.index,
                fixes: askPitch(page.id, step, enough, figures),
            });
        }
    },
};
