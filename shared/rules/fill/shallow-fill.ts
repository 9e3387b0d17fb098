import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { atItsWord } from '../figures';
import { askDepth, depthUnit } from '../helpers/ask-depth';
import { depthForFill, leastFillDepth as leastDepth } from '../helpers/fill-depth';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'shallow-fill',
    title: 'No depth for the fill',
    severities: ['warning', 'error'],
    quickFix: 'sometimes',
    condition: `A fill goes into an engraving that only colours the wood, or that is less than ${leastDepth} mm deep at worst.`,
    error: 'The engraving only colours the wood: there is no hollow for the resin to stand in.',
    why: 'Resin needs depth to sit in. A mere colour has none, and the fill comes off with the first strokes of the sander.',
    mend: 'Give the engraving a depth, some tenths of a millimetre more than will be sanded off.',
    source: commonPractice,
};

export const shallowFill: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { fill, step } of plan.steps) {
            // Its layers share the depth: one word for all of them.
            if (fill === undefined || step.kind !== 'fill' || fill.layer.number > 1) continue;
            const { pocket } = fill;
            const toned = pocket.depth === undefined && pocket.tone !== undefined;
            const laser = plan.steps[pocket.index]?.laser;
            if (laser?.depth === undefined || (!toned && fill.depth.low >= leastDepth)) continue;
            const deep = depthForFill(plan, pocket, laser);
            const unit = depthUnit(pocket);
            const { text, fixes, instead } = askDepth(page.id, pocket, deep, plan, figures);
            const enough = `${text === undefined ? '' : phrase`; ${text} would do`}.${instead}`;
            const message = toned
                ? phrase`${fill.pocket.name} only colours the wood: there is no depth for ${step.resin?.name ?? phrase`the fill`} to sit in${enough}`
                : phrase`${pocket.name} is ${showLength(fill.depth.value, unit)} deep, ${showLength(Math.max(0, fill.depth.low), unit)} at its shallowest; a fill needs ${showLength(leastDepth, unit)} to hold${enough}`;
            const wish = pocket.depth ?? pocket.tone;
            yield finding(page, {
                severity: toned ? 'error' : 'warning',
                message,
                where: step.pocket.where,
                step: step.index,
                related: wish === undefined ? [] : [{ message: phrase`Its depth is asked for here.`, where: wish.where }],
                fixes,
            });
        }
    },
};
