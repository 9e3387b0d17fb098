import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { atItsWord } from '../figures';
import { askPasses } from '../helpers/ask-passes';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** What one pass may take off and char little, mm. @commonPractice */
const light = 0.25;
/** A pass this deep is one that several light ones should share, mm: the same. */
const heavy = 0.4;

const page: Page = {
    id: 'one-heavy-pass',
    title: 'One heavy pass',
    severities: ['hint'],
    quickFix: 'sometimes',
    condition: `As many passes as are written take more than ${heavy} mm off each, most often one alone.`,
    why: 'The slower the beam, the more heat soaks into the walls: they char, and soft grain burns deeper than hard. Several light passes reach the same depth cleaner.',
    mend: `Ask for more passes, about one for each ${light} mm, or leave \`passes\` out and let them be worked out.`,
    source: commonPractice,
};

export const oneHeavyPass: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, laser } of plan.steps) {
            if (step.kind !== 'engrave' || laser?.settings === undefined || step.passes === undefined || laser.through) continue;
            if (laser.goesOn !== undefined) continue; // its passes so far are burnt
            const { passes } = laser.settings;
            const depth = laser.depth?.value ?? 0;
            if (depth / passes <= heavy) continue;
            // With held settings more passes would only dig deeper.
            const { passes: better = Math.ceil(depth / light), fixes } = askPasses(
                page.id,
                step,
                Math.ceil(depth / light),
                figures,
            );
            yield finding(page, {
                severity: 'hint',
                message: phrase`${step.name} goes ${showLength(depth)} deep in ${passes === 1 ? phrase`one pass` : phrase`${passes} passes`}; ${better} lighter ones char less.`,
                where: step.passes.where,
                step: step.index,
                fixes,
            });
        }
    },
};
