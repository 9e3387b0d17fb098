import { showTime } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Seal } from '../../recipe/step';
import { atItsWord } from '../figures';
import { elapsed, longEnough } from '../helpers/elapsed';
import { calledInShop } from '../helpers/laid-over';
import { longerWait } from '../helpers/longer-wait';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'fill-before-dry',
    title: 'Filled before the seal is dry',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition: 'Resin goes in before the last coat of sealer has had its drying time.',
    why: 'Solvent or water that is still in the wood comes up through the resin as bubbles, and resin does not stick to a wet coat.',
    mend: 'Wait for the sealer to dry before filling.',
    source: `${commonPractice} The drying time is the stock’s figure.`,
};

export const fillBeforeDry: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, face } of plan.steps) {
            if (step.kind !== 'fill') continue;
            const seal = plan.steps
                .filter((other) => other.step.kind === 'seal' && other.face === face && other.step.index < step.index)
                .map((other) => other.step as Seal)
                .pop();
            const dry = seal?.sealer?.dry;
            if (seal === undefined || dry === undefined) continue;
            const wanted = dry.value - dry.tolerance;
            const gone = elapsed(plan, seal.index, step.index);
            if (longEnough(gone, wanted)) continue;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${seal.sealer && calledInShop(seal.sealer)} needs ${showTime(wanted)} to dry; ${step.resin?.name ?? phrase`the fill`} goes on it after ${showTime(gone)}.`,
                where: step.where,
                step: step.index,
                rests: [dry.where],
                related: [{ message: phrase`The last coat goes on here.`, where: seal.where }],
                fixes: longerWait(page.id, plan, seal, step, wanted - gone, figures),
            });
        }
    },
};
