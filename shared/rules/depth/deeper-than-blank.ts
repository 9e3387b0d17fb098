import { spread } from '../../quantity/interval';
import { showLength } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Engrave } from '../../recipe/step';
import { atItsWord, type Figures } from '../figures';
import { askDepth, isSaidAs, withDepth } from '../helpers/ask-depth';
import { blankOf, materialName } from '../helpers/blank-names';
import { deepestWithFloor, leastFloor } from '../helpers/floor';
import { usualReading } from '../helpers/unit-slip';
import type { Page } from '../page';
import { skinOf } from '../piece/skin-left';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'deeper-than-blank',
    title: 'Deeper than the blank',
    severities: ['error'],
    quickFix: 'sometimes',
    firm: 'sometimes',
    condition:
        'An engraving is deeper than its blank is thick, at the thin end of the thickness tolerance. Deeper than its thick end, no `allow` silences it.',
    error: 'Always: where the board is as thin as its tolerance allows, the beam comes out below.',
    why: 'The beam comes out on the other side, and whatever lies below is burnt.',
    mend: 'Give a depth that leaves a floor, take a thicker board, or write `depth through` if the piece is meant to be pierced.',
    source: 'Plain arithmetic: depth against thickness less its tolerance.',
};

export const deeperThanBlank: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const stepPlan of plan.steps) {
            const { laser, step } = stepPlan;
            if (step.kind !== 'engrave' || laser?.depth === undefined || laser.through) continue;
            const blank = blankOf(plan, stepPlan);
            if (blank?.thickness === undefined || laser.depth.value <= blank.thickness.low) continue;
            const half = plan.steps.find(({ inlay }) => inlay?.relief.index === step.index)?.inlay;
            if (half !== undefined && skinOf(half) !== undefined) continue; // skin-left says it
            const { thickness } = blank;
            const thinnest = spread(thickness) > 0 ? phrase` (${showLength(thickness.low)} at its thinnest)` : '';
            const where = step.depth !== undefined && 'where' in step.depth ? step.depth.where : step.where;
            const declared = blank.blank.sheet?.thickness?.where;
            const veneer = blank.blank.sheet?.kind === 'veneer';
            const most = veneer ? undefined : deepestWithFloor(step, laser.depth, thickness);
            const { text, fixes, instead } = askDepth(page.id, step, most, plan, figures);
            const floor = phrase`leaves a floor of ${showLength(leastFloor)}`;
            const suits = isSaidAs(most, step, text)
                ? phrase`at most ${text} ${floor}`
                : phrase`${text} ${floor} and suits the rest`;
            const meant = step.depth !== undefined && 'unit' in step.depth ? usualReading(step.depth) : undefined;
            const slip = meant === undefined ? '' : phrase` Or was ${meant.text} meant?`;
            const mend = `${text === undefined ? '' : `: ${suits}`}.${instead}${slip}`;
            yield finding(page, {
                severity: 'error',
                firm: laser.depth.value > thickness.high,
                message: phrase`The ${step.name} is ${showLength(laser.depth.value)} deep; ${materialName(blank)} is ${showLength(thickness.value)} thick${thinnest}${mend}`,
                where,
                step: step.index,
                fixes: [...fixes, ...slipFix(page.id, step, meant, figures)],
                related: declared === undefined ? [] : [{ message: phrase`The thickness is written here.`, where: declared }],
            });
        }
    },
};

/** Writes the unit that was probably meant, where that suits everything else. */
function slipFix(rule: string, step: Engrave, meant: ReturnType<typeof usualReading>, figures: Figures): Fix[] {
    if (meant === undefined || step.depth === undefined || !figures.suits(rule, [withDepth(step, meant.mm)])) return [];
    return [{ title: phrase`Write ${meant.text}`, changes: [{ do: 'replace', where: step.depth.where, text: meant.text }] }];
}
