import { batchesFor } from '../../bench/mix-batches';
import { showTime } from '../../quantity/show';
import { calledInShop } from '../helpers/laid-over';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'short-pot-life',
    title: 'Pot life shorter than the run',
    severities: ['info', 'warning'],
    condition: 'So many pieces are made that the resin stiffens in the cup before the last one is filled.',
    why: 'Resin that has begun to set pulls threads, traps air and does not level. A full cup also sets sooner than a shallow one.',
    mend: 'Mix several smaller cups, one after the other, or take a slower hardener.',
    source: `${commonPractice} Mixing is reckoned with 8 min and filling with 4 min for each piece.`,
};

export const shortPotLife: Rule = {
    page,
    *examine(plan) {
        for (const { fill, step } of plan.steps) {
            const potLife = step.kind === 'fill' ? step.resin?.potLife : undefined;
            if (fill === undefined || step.kind !== 'fill' || potLife === undefined) continue;
            const batches = batchesFor(plan.recipe.make, potLife.value);
            if (batches.count < 2 && !batches.tooSlow) continue;
            yield finding(page, {
                severity: batches.tooSlow ? 'warning' : 'info',
                message: batches.tooSlow
                    ? `${calledInShop(step.resin!)} stays fluid for ${showTime(potLife.value)}, which is hardly enough for one piece.`
                    : `${calledInShop(step.resin!)} stays fluid for ${showTime(potLife.value)}: for ${plan.recipe.make} pieces mix ${batches.count} cups, each for ${batches.pieces}.`,
                where: step.where,
                step: step.index,
                related: [{ message: 'The pot life is written here.', where: potLife.where }],
            });
        }
    },
};
