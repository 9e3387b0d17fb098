import { gluedIn, glueUpTime } from '../../bench/glue-up';
import { showArea, showTime } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { calledInShop } from '../helpers/laid-over';
import { ownMinutes, spreadsGlue } from '../helpers/own-minutes';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'open-time',
    title: 'Glue sets before it is pressed',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition:
        'Spreading the glue and laying one inlay takes longer than the glue stays open (`open` in the stock): by its area, or by the minutes of `do` steps beside it that spread the glue or lay the piece. Marks, clamps and cleaning up, which the schedule counts too, are not in that.',
    why: 'Glue that has begun to set no longer wets the other face: the joint looks closed and lets go, and a half that is not down yet stays up.',
    mend: 'Take a glue that stays open longer, such as epoxy or slow wood glue, let in smaller pieces one after the other, or have a second pair of hands.',
    source: `${commonPractice} It counts 5 s and 2 s for each cm²; the open time is the stock’s figure, its longer end.`,
};

/** As the built-in stock has it, which a test holds. */
export const slower = { name: 'epoxy-glue', open: 20 * 60 } as const;

export const openTime: Rule = {
    page,
    *examine(plan) {
        for (const { step, inlay } of plan.steps) {
            const glue = step.kind === 'inlay' ? step.glue : undefined;
            if (step.kind !== 'inlay' || inlay === undefined || glue?.open === undefined) continue;
            const open = glue.open.value + glue.open.tolerance;
            const { area } = inlay.pocketLaser;
            const own = ownMinutes(plan, step, spreadsGlue);
            const needed = Math.max(glueUpTime(area), own?.time ?? 0);
            if (needed <= open) continue;
            const inTurn = glue.kinds.includes('cyanoacrylate') ? phrase`, one after the other` : '';
            const takes =
                needed === own?.time
                    ? phrase`spreading and laying takes ${showTime(needed)} by your own steps. Spread and lay within ${showTime(open)}, or take a glue that stays open longer.`
                    : phrase`spreading and laying ${showArea(area)} takes about ${showTime(needed)}. It does for ${showArea(gluedIn(open))} at once${inTurn}.`;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${calledInShop(glue)} stays open for ${showTime(open)}; ${takes}`,
                where: step.where,
                step: step.index,
                rests: [glue.open.where],
                related: [
                    { message: phrase`The open time is written here.`, where: glue.open.where },
                    ...(own?.steps ?? []).map(({ where }) => ({ message: phrase`These minutes count.`, where })),
                ],
                fixes:
                    step.glueWhere === undefined || needed > slower.open || glue.kinds.includes(slower.name)
                        ? []
                        : [
                              {
                                  title: phrase`Glue with ${slower.name}, which stays open for ${showTime(slower.open)}`,
                                  changes: [{ do: 'replace', where: step.glueWhere, text: `glue ${slower.name}` }],
                              },
                          ],
            });
        }
    },
};
