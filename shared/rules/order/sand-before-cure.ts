import type { Plan } from '../../plan/plan';
import { showTime } from '../../quantity/show';
import type { Where } from '../../quantity/where';
import { phrase } from '../../recipe/phrase';
import { atItsWord } from '../figures';
import { type Content, contentsOf, isInFaceUp } from '../helpers/contents';
import { elapsed, longEnough } from '../helpers/elapsed';
import { faceBefore } from '../helpers/face-at';
import { calledInShop } from '../helpers/laid-over';
import { longerWait } from '../helpers/longer-wait';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Part of a glue's cure after which a pressed joint stands sanding. @commonPractice */
export const glueHolds = 0.5;

/** Part of a resin's cure before which it has hardly set: it flows, and no paper works on it. @commonPractice */
export const resinSets = 0.25;

const page: Page = {
    id: 'sand-before-cure',
    title: 'Sanded before it has cured',
    severities: ['warning', 'error', 'hint'],
    quickFix: 'sometimes',
    condition:
        'A fill is sanded before its resin has cured, or an inlay before half of its glue’s cure is over. Waits count, and the work in between.',
    error: 'Less than a quarter of the resin’s cure is over: it has hardly set, and nothing that is soft can be sanded.',
    why: 'Soft resin smears, clogs the paper and pulls out of the pocket; heat and pull of the sander lift veneer from wet glue.',
    mend: 'Wait longer before sanding. A cold room makes every cure longer; the product’s own sheet comes first.',
    source: `${commonPractice} The cure is the stock’s figure.`,
};

export const sandBeforeCure: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, blank, face } of plan.steps) {
            if (step.kind !== 'sand') continue;
            for (const content of contentsOf(plan, faceBefore(plan, step.index, blank))) {
                const wanted = cureOf(plan, content);
                if (wanted === undefined || !isInFaceUp(content) || sandedSince(plan, content, step.index, face)) continue;
                const made = plan.steps[content.step]!.step;
                const gone = elapsed(plan, content.step, step.index);
                if (longEnough(gone, wanted.time)) continue;
                const isSoft = content.kind === 'resin' && gone < wanted.time * resinSets;
                const soft = isSoft ? phrase` and has hardly set` : '';
                yield finding(page, {
                    severity: isSoft ? 'error' : 'warning',
                    message: phrase`${wanted.name} needs ${showTime(wanted.time)} before it can be sanded; here it has had ${showTime(gone)}${soft}.`,
                    where: step.where,
                    step: step.index,
                    rests: [wanted.where],
                    related: [
                        {
                            message: content.kind === 'resin' ? phrase`It is poured here.` : phrase`It is glued here.`,
                            where: made.where,
                        },
                    ],
                    fixes: longerWait(page.id, plan, made, step, wanted.time - gone, figures),
                });
            }
        }
    },
};

/** What has to harden before a content can be sanded, and how long that takes, s. */
export function cureOf(plan: Plan, content: Pick<Content, 'step'>): { name: string; time: number; where: Where } | undefined {
    const made = plan.steps[content.step]?.step;
    if (made?.kind === 'fill' && made.resin?.cure !== undefined) {
        return {
            name: calledInShop(made.resin),
            time: made.resin.cure.value - made.resin.cure.tolerance,
            where: made.resin.cure.where,
        };
    }
    if (made?.kind === 'inlay' && made.glue?.cure !== undefined) {
        return { name: calledInShop(made.glue), time: made.glue.cure.value * glueHolds, where: made.glue.cure.where };
    }
    return undefined;
}

/** Only the first sanding after the work is told. */
function sandedSince(plan: Plan, content: Content, until: number, face: string | undefined): boolean {
    return plan.steps.some(
        (other) =>
            other.step.kind === 'sand' && other.face === face && other.step.index > content.step && other.step.index < until,
    );
}
