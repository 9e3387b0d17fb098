import type { Plan } from '../../plan/plan';
import { showTime } from '../../quantity/show';
import type { Where } from '../../quantity/where';
import { laidBy } from '../../recipe/laid-by';
import { phrase } from '../../recipe/phrase';
import type { Finish, Mask, Sand, Seal, Step } from '../../recipe/step';
import { atItsWord } from '../figures';
import { elapsed, longEnough } from '../helpers/elapsed';
import { faceBefore } from '../helpers/face-at';
import { calledInShop } from '../helpers/laid-over';
import { longerWait } from '../helpers/longer-wait';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** The least that a coat has before tape goes on it, s. Seen in painters' advice. */
const beforeTape = 24 * 3600;

const page: Page = {
    id: 'coat-not-dry',
    title: 'Sanded or taped before the coat is dry',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition:
        'A face is sanded before the coat on it has dried (`dry` in the stock), or masked sooner than a day after its finish, where that cures for longer (`cure`).',
    why: 'A coat that is still soft tears, rolls up under the paper and clogs it. Tape keeps it soft, prints into it, and takes it along when it is peeled.',
    mend: 'Wait longer. Before its cure is over, take tape for delicate surfaces and peel it slowly, the same day; or burn through the tape first and finish afterwards.',
    source: `Painters’ advice (seen): tape on a fresh coat after 24 h at the soonest and for delicate surfaces alone, ordinary tape once it has cured, which some put at 30 days. Sanding: ${commonPractice.toLowerCase()} The times are the stock’s figures.`,
};

export const coatNotDry: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, blank } of plan.steps) {
            if (step.kind !== 'sand' && step.kind !== 'mask') continue;
            const under = openCoat(plan, step, blank);
            const needed = under === undefined ? undefined : neededBefore(step, under);
            if (under === undefined || needed === undefined) continue;
            const gone = elapsed(plan, under.index, step.index);
            if (longEnough(gone, needed.time)) continue;
            const does = step.kind === 'sand' ? 'sanded' : phrase`taped over`;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${calledInShop(laidBy(under)!)} is ${does} after ${showTime(gone)}: it tears. It needs ${showTime(needed.time)}.`,
                where: step.where,
                step: step.index,
                rests: [needed.where],
                related: [{ message: phrase`It goes on here.`, where: under.where }],
                fixes: longerWait(page.id, plan, under, step, needed.time - gone, figures),
            });
        }
    },
};

/** The coat that lies open on a face just before a step. */
function openCoat(plan: Plan, before: Step, blank: string | undefined): Seal | Finish | undefined {
    const top = faceBefore(plan, before.index, blank)?.bare.layers[0];
    const step = top?.kind === 'coat' && top.step !== undefined ? plan.steps[top.step]?.step : undefined;
    return step?.kind === 'seal' || step?.kind === 'finish' ? step : undefined;
}

/** How long a coat has to have had, s, and by which figure; undefined where its stock does not say. */
function neededBefore({ kind }: Sand | Mask, under: Seal | Finish): { time: number; where: Where } | undefined {
    const coat = under.kind === 'seal' ? under.sealer : under.coat;
    const dry = coat?.dry === undefined ? undefined : { time: coat.dry.value - coat.dry.tolerance, where: coat.dry.where };
    const cure = kind === 'mask' && under.kind === 'finish' ? under.coat?.cure : undefined;
    const taped = cure === undefined ? undefined : { time: Math.min(cure.value, beforeTape), where: cure.where };
    return taped !== undefined && taped.time >= (dry?.time ?? 0) ? taped : dry;
}
