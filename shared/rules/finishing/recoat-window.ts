import { recoat } from '../../bench/pours';
import { showTime } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Fill } from '../../recipe/step';
import { atItsWord } from '../figures';
import { elapsed, elapsedAtMost } from '../helpers/elapsed';
import { calledInShop } from '../helpers/laid-over';
import { longerWait } from '../helpers/longer-wait';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'recoat-window',
    title: 'Next layer too soon or too late',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition:
        'A pocket is filled in layers, and a layer follows before the one under it carries it, or after it has cured too far to bond, without sanding between.',
    why: 'Too soon, the layers run together and heat up as one deep pour. Too late, the new resin only lies on the old one and peels.',
    mend: 'Pour within the resin’s `recoat` window, or let it cure and sand it dull first.',
    source: 'The resin’s own figure; 4 to 10 h for coating epoxy is trade guidance (seen).',
};

export const recoatWindow: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        const last = new Map<string, Fill>();
        for (const { step, fill, face } of plan.steps) {
            if (step.kind !== 'fill' || fill === undefined) continue;
            const before = last.get(fill.pocket.name);
            last.set(fill.pocket.name, step);
            const window = before?.resin?.recoat;
            if (before === undefined || window === undefined) continue;
            const [from, to] = [window.value - window.tolerance, window.value + window.tolerance];
            const least = elapsed(plan, before.index, step.index);
            const soonest = recoat(least, { from, to });
            const gone = soonest === 'too-soft' ? least : elapsedAtMost(plan, before.index, step.index);
            const how = soonest === 'too-soft' ? soonest : recoat(gone, { from, to });
            const sanded = plan.steps.some(
                (other) =>
                    other.step.kind === 'sand' &&
                    other.face === face &&
                    other.step.index > before.index &&
                    other.step.index < step.index,
            );
            if (how === 'bonds' || (how === 'sand-first' && sanded)) continue;
            const name = calledInShop(before.resin!);
            yield finding(page, {
                severity: 'warning',
                message:
                    how === 'too-soft'
                        ? phrase`${name} carries the next layer after ${showTime(from)}; this one follows after ${showTime(gone)}.`
                        : phrase`${name} bonds by itself until ${showTime(to)} after it was poured; this layer follows after ${showTime(gone)}, and nothing was sanded dull.`,
                where: step.where,
                step: step.index,
                rests: [window.where],
                related: [{ message: phrase`The layer before it is poured here.`, where: before.where }],
                fixes: how === 'too-soft' ? longerWait(page.id, plan, before, step, from - gone, figures) : [],
            });
        }
    },
};
