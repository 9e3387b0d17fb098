import { isGone } from '../../piece/column';
import type { Plan } from '../../plan/plan';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Fill, Seal } from '../../recipe/step';
import { woodOf } from '../helpers/blank-names';
import { isSealed } from '../helpers/contents';
import { elapsed } from '../helpers/elapsed';
import { faceBefore } from '../helpers/face-at';
import { timeText } from '../helpers/longer-wait';
import { statementBefore } from '../helpers/statement-before';
import { wetting } from '../helpers/wetting';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'unsealed-fill',
    title: 'No seal under the fill',
    severities: ['warning'],
    quickFix: 'always',
    condition: 'A pocket in a wood whose fibres draw liquids in is filled, and has not been sealed since it was engraved.',
    why: 'The fibres suck thin resin in, and the colour goes with it: a tinted fringe creeps out beside the drawing, and deeper than sanding may go. Walnut hardly does so; the stock says of each wood whether it bleeds.',
    mend: 'Put a `seal` between the engraving and the fill, and its drying time: a thin coat of slow epoxy closes the fibres, and so does clear PVA let down with water.',
    source: commonPractice,
};

export const unsealedFill: Rule = {
    page,
    *examine(plan) {
        for (const [index, stepPlan] of plan.steps.entries()) {
            const { fill, step } = stepPlan;
            if (fill === undefined || step.kind !== 'fill') continue;
            const wood = woodOf(plan, stepPlan.blank);
            if (wood === undefined || !wood.bleeds) continue;
            const pocket = faceBefore(plan, index, stepPlan.blank)?.cells.filter(
                ({ column }) =>
                    !isGone(column) &&
                    (column.tone === fill.pocket.index || column.digs.some((dig) => dig.step === fill.pocket.index)),
            );
            if (pocket === undefined || pocket.length === 0 || pocket.some(({ column }) => isSealed(plan, column))) continue;
            const later = plan.steps.find(
                (other) => other.step.kind === 'seal' && other.step.index > index && other.blank === stepPlan.blank,
            );
            yield finding(page, {
                severity: 'warning',
                message: phrase`${wood.name} bleeds${wood.pores === undefined ? '' : ` (${poreWords[wood.pores]})`}: ${step.resin?.name ?? phrase`the fill`} goes in before anything has sealed ${fill.pocket.name}.`,
                where: step.where,
                step: step.index,
                related: later === undefined ? [] : [{ message: phrase`It is sealed only here.`, where: later.step.where }],
                fixes: [later?.step.kind === 'seal' ? sealEarlier(later.step, step) : sealFirst(plan, step, stepPlan.blank!)],
            });
        }
    },
};

const poreWords = {
    diffuse: 'diffuse pores',
    'semi-ring': 'half ring-porous',
    ring: 'ring-porous',
    softwood: 'a softwood',
} as const;

/** The sealing that comes too late, with the time that it needs to dry. */
function sealEarlier({ whole, sealer }: Seal, fill: Fill): Fix {
    const move = { do: 'move', statement: whole, before: fill.whole } as const;
    const dry = sealer?.dry === undefined ? [] : [statementBefore(fill, `wait ${timeText(sealer.dry.value)}`)];
    return { title: phrase`Seal before filling`, preferred: true, changes: [move, ...dry] };
}

/** The built-in sealer that dries fastest; two thin coats close more than one, on what has dried. @commonPractice */
function sealFirst(plan: Plan, fill: Fill, blank: string): Fix {
    const wet = wetFor(plan, fill, blank);
    const dry = wet > 0 ? `wait ${timeText(wet)}\n  ` : '';
    return {
        title: phrase`Seal with two coats of shellac first`,
        changes: [statementBefore(fill, `${dry}seal ${blank} with shellac { coats 2 }\n  wait 2 h`)],
    };
}

/** How much longer something on the blank is wet when the fill begins, s. */
function wetFor(plan: Plan, fill: Fill, blank: string): number {
    const earlier = plan.steps.filter((other) => other.blank === blank && other.step.index < fill.index);
    const left = earlier.map(({ step }) => (wetting(plan, step.index)?.needs ?? 0) - elapsed(plan, step.index, fill.index));
    return Math.max(0, ...left);
}
