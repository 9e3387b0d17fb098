import { poursFor } from '../bench/pours';
import { showLength, showTime } from '../quantity/show';
import type { Page } from './page';
import { finding, type Rule } from './rule';

const page: Page = {
    id: 'deep-pour',
    title: 'Deeper than one pour',
    condition: 'A pocket is filled in one step, and is deeper than the resin may be poured at once.',
    why: 'Resin warms as it cures. Too much of it at once boils, yellows, shrinks off the walls or cracks.',
    mend: 'Pour in layers, each no deeper than the resin’s sheet says, and let each set before the next; or take a resin for deep pours.',
    source: 'The resin’s own figure. Layers of about 6 mm for coating epoxy are trade guidance (seen).',
};

export const deepPour: Rule = {
    page,
    *examine(plan) {
        for (const { fill, step } of plan.steps) {
            const deepest = step.kind === 'fill' ? step.resin?.deepestPour : undefined;
            if (fill === undefined || step.kind !== 'fill' || deepest === undefined) continue;
            const most = deepest.value + deepest.tolerance;
            const pours = poursFor(fill.depth.value, most);
            if (pours.count < 2) continue;
            const already = plan.steps.filter(
                (other) => other.fill?.pocket.index === fill.pocket.index && other.step.kind === 'fill',
            ).length;
            if (already >= pours.count) continue;
            const cure = step.resin?.cure;
            yield finding(page, {
                severity: 'warning',
                message: `${fill.pocket.name} is ${showLength(fill.depth.value)} deep; ${step.resin!.name} may be poured ${showLength(most)} at once: pour ${pours.count} layers of ${showLength(pours.each)}${cure === undefined ? '' : `, each with its own cure of ${showTime(cure.value)}`}.`,
                where: step.where,
                step: step.index,
                related: [{ message: 'The depth is asked for here.', where: fill.pocket.depth?.where ?? fill.pocket.where }],
            });
        }
    },
};
