import { hardlyShows } from '../../bench/contrast';
import { showNumber } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'low-contrast',
    title: 'Hardly any contrast',
    severities: ['info'],
    condition: `A fill, an inlay or a mere colour differs from the wood around it by less than ${hardlyShows} (CIEDE2000).`,
    why: 'Grain and light break up an edge: what differs so little is not seen as a figure.',
    mend: 'Choose another wood or colour, or burn darker. If it is meant as a quiet mark, `allow low-contrast because "…"`.',
    source: 'CIEDE2000 (CIE 142:2001). The limit is our own judgement: one board of a wood differs by several from the next. The colours of the built-in woods are by eye, within about 5; no table of them could be read.',
};

export const lowContrast: Rule = {
    page,
    *examine(plan) {
        for (const { step, wood } of plan.steps) {
            const seen = wood?.contrast;
            if (seen === undefined || seen.difference >= hardlyShows) continue;
            yield finding(page, {
                severity: 'info',
                message: phrase`${seen.figure} differs from ${seen.ground} by ${showNumber(seen.difference, 1)}, give or take 5 where a colour is by eye; below ${hardlyShows} it hardly shows. Choose another wood or colour, or look at it on an offcut first.`,
                where: step.kind === 'engrave' ? (step.tone?.where ?? step.where) : step.where,
                step: step.index,
            });
        }
    },
};
