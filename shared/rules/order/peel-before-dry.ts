import { showTime } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { atItsWord } from '../figures';
import { elapsed, longEnough } from '../helpers/elapsed';
import { calledInShop } from '../helpers/laid-over';
import { longerWait } from '../helpers/longer-wait';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';
import { glueHolds } from './sand-before-cure';

const page: Page = {
    id: 'peel-before-dry',
    title: 'Peeled before the glue holds',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition: 'The backing of a veneer half is peeled off before half of its glue’s cure is over.',
    why: 'The foil’s adhesive holds better than wet glue: small parts come out with it.',
    mend: 'Wait longer before peeling.',
    source: `${commonPractice} The cure is the stock’s figure.`,
};

export const peelBeforeDry: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, blank } of plan.steps) {
            if (step.kind !== 'peel') continue;
            const glued = plan.steps.find(
                ({ inlay, step: other }) => inlay?.reliefLaser.blank === blank && other.index < step.index,
            );
            if (glued?.step.kind !== 'inlay' || glued.step.glue?.cure === undefined) continue;
            const wanted = glued.step.glue.cure.value * glueHolds;
            const gone = elapsed(plan, glued.step.index, step.index);
            if (longEnough(gone, wanted)) continue;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${calledInShop(glued.step.glue)} needs ${showTime(wanted)} before ${blank} can be peeled; here it has had ${showTime(gone)}.`,
                where: step.where,
                step: step.index,
                rests: [glued.step.glue.cure.where],
                related: [{ message: phrase`It is glued here.`, where: glued.step.where }],
                fixes: longerWait(page.id, plan, glued.step, step, wanted - gone, figures),
            });
        }
    },
};
