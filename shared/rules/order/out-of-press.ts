import { showTime } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { atItsWord } from '../figures';
import { elapsed, longEnough } from '../helpers/elapsed';
import { calledInShop } from '../helpers/laid-over';
import { longerWait } from '../helpers/longer-wait';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'out-of-press',
    title: 'Out of the press too soon',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition:
        'A board is burnt, sealed, poured into or glued again before the glue of an inlay in it has been pressed for as long as its stock says (`clamp`). Peeling and sanding have rules of their own.',
    why: 'The glue has no strength yet. The inlay rises with the first warmth or damp, and what was level under the press stands proud for good.',
    mend: 'Leave it under the press. What belongs to the same set-up of the laser is burnt before the gluing.',
    source: 'The stock’s figure, its longer end: 30 to 60 min for wood glue and 4 h for polyurethane in a glue maker’s guide, 10 min for thin cyanoacrylate with a gap of 5 mil in Pizzi and Mittal (all seen).',
};

const disturbs: ReadonlySet<Step['kind']> = new Set(['engrave', 'cut', 'seal', 'fill', 'inlay', 'finish', 'mask']);

export const outOfPress: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step: glued, blank } of plan.steps) {
            const clamp = glued.kind === 'inlay' ? glued.glue?.clamp : undefined;
            if (glued.kind !== 'inlay' || clamp === undefined) continue;
            const next = plan.steps.find(
                ({ step, blank: of }) => step.index > glued.index && of === blank && disturbs.has(step.kind),
            )?.step;
            // Several halves laid one behind the other go under one press.
            if (next === undefined || (next.kind === 'inlay' && next.index === glued.index + 1)) continue;
            const needed = clamp.value + clamp.tolerance;
            const gone = elapsed(plan, glued.index, next.index);
            if (longEnough(gone, needed)) continue;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${calledInShop(glued.glue!)} stays pressed for ${showTime(needed)}; here ${blank} is worked on after ${showTime(gone)}.`,
                where: next.where,
                step: next.index,
                rests: [clamp.where],
                related: [{ message: phrase`It is glued here.`, where: glued.where }],
                fixes: longerWait(page.id, plan, glued, next, needed - gone, figures),
            });
        }
    },
};
