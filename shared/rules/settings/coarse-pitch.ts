import { spotOf } from '../../burn/beam';
import { ripple, sigmaOf } from '../../burn/dose';
import { pitchForSpot } from '../../burn/pitch';
import { showLength, showRatio } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { atItsWord } from '../figures';
import { askPitch } from '../helpers/ask-pitch';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

/** Ripple of the dose, as a part of it, that shows as lines: own judgement, no source. */
const shows = 0.3;
/** Lines closer than this run together for the eye, mm: one arc minute at reading distance. @commonPractice */
const eyeParts = 0.1;

const page: Page = {
    id: 'coarse-pitch',
    title: 'Pitch too coarse',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition:
        'The scan lines lie so far apart for the spot that the dose between them falls and rises by more than 30 %, and far enough apart to be seen. Dots of a picture may lie as far apart as the spot is wide: its greys come from the gaps.',
    why: 'Every line shows as a groove of its own, and the floor is ribbed: colour is streaky, and glue stands in the ribs.',
    mend: 'Scan with a finer pitch; about half of the spot hides the lines.',
    source: 'Own derivation: a row of Gaussian lines at pitch p ripples by 2·exp(−2π²σ²/p²), with σ a quarter of the spot. What shows is our own judgement; of dots, common practice, no source.',
};

export const coarsePitch: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        const spot = spotOf(plan.recipe.laser);
        if (spot === undefined) return;
        for (const { step, laser } of plan.steps) {
            const pitch = laser?.settings?.pitch;
            if (step.kind !== 'engrave' || pitch === undefined) continue;
            const dotted = laser?.pictures !== undefined && laser.whole?.rings.length === 0;
            if (dotted && pitch <= spot.diameter + 1e-9) continue;
            const rippled = ripple(pitch, sigmaOf(spot.diameter));
            if (!(rippled > shows && pitch > eyeParts + 1e-9)) continue;
            const better = pitchForSpot(spot) ?? spot.diameter / 2;
            yield finding(page, {
                severity: 'warning',
                message: phrase`Lines ${showLength(pitch)} apart with a spot of ${showLength(spot.diameter)} ripple by ${showRatio(Math.min(1, rippled))}: they will show.`,
                where: step.pitch?.where ?? step.where,
                step: step.index,
                fixes: askPitch(page.id, step, better, figures).map((fix) => ({ ...fix, preferred: true })),
            });
        }
    },
};
