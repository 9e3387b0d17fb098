import { leastMix } from '../../bench/mix-batches';
import { showMass, showRatio, showVolume } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Marks of a small syringe, mm3, and of pocket scales, g. @commonPractice */
const graduation = { volume: 50, weight: 0.05 } as const;
/** Error of the ratio that is too much: 2 to 5 % is said to leave resin soft (seen, not a primary source). */
const worst = 0.05;
/** What stays in the cup, as in the shopping list. */
const spare = 1.15;

const page: Page = {
    id: 'small-mix',
    title: 'Too little to mix in the right ratio',
    severities: ['hint'],
    condition:
        'All the pieces together take so little resin that half a mark of a small syringe, or of pocket scales, puts the ratio off by more than 5 %.',
    why: 'Two to five per cent off the ratio may leave resin soft for good.',
    mend: 'Mix more than is needed, fill several products from one cup, or weigh on finer scales.',
    source: `${commonPractice} The effect of a wrong ratio was seen in a source that is not primary.`,
};

export const smallMix: Rule = {
    page,
    *examine(plan) {
        for (const { fill, step } of plan.steps) {
            const mix = step.kind === 'fill' ? step.resin?.mix : undefined;
            const parts = fill?.mix.parts;
            if (step.kind !== 'fill' || mix === undefined || parts === undefined) continue;
            const whole = (parts.resin + parts.hardener) * plan.recipe.make * spare;
            const least = leastMix([mix.resin, mix.hardener], graduation[mix.by], worst);
            if (!(whole > 0) || whole >= least) continue;
            const show = mix.by === 'volume' ? showVolume : showMass;
            yield finding(page, {
                severity: 'hint',
                message: phrase`${show(whole)} of ${step.resin!.name} in all is too little to measure out to ${showRatio(worst)}: mix at least ${show(least)}.`,
                where: step.where,
                step: step.index,
            });
        }
    },
};
