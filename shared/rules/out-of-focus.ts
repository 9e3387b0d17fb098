import { diameterAt, focusSteps, spotOf } from '../burn/beam';
import { showLength, showNumber } from '../quantity/show';
import type { Page } from './page';
import { finding, type Rule } from './rule';
import { statementBefore } from './statement-before';

const page: Page = {
    id: 'out-of-focus',
    title: 'The floor drops out of focus',
    condition: 'A pocket is deeper than the Rayleigh range of the laser’s focus.',
    why: 'Down there the spot has twice the area and half the dose: walls lean more, detail blurs, and the depth falls short of the law, which is measured at the face.',
    mend: 'Lower the focus between passes by the depth already reached, or use a lens of longer focal length.',
    source: 'Gaussian optics: the Rayleigh range is π·w₀²/(M²·λ) (Siegman, Lasers, 1986; from memory).',
};

export const outOfFocus: Rule = {
    page,
    *examine(plan) {
        const spot = spotOf(plan.recipe.laser);
        if (spot?.rayleigh === undefined) return;
        for (const { step, laser } of plan.steps) {
            if (step.kind !== 'engrave' || laser?.depth === undefined || laser.tone !== undefined) continue;
            const steps = focusSteps(spot, laser.depth.value);
            const told = plan.recipe.steps.some((other) => other.kind === 'do' && /focus/i.test(other.text));
            if (steps < 2 || told) continue;
            const growth = diameterAt(spot, laser.depth.value) / spot.diameter;
            yield finding(page, {
                severity: 'info',
                message: `At ${showLength(laser.depth.value)} the spot is ${showNumber(growth, 1)} times as wide (the focus reaches ${showLength(spot.rayleigh)}): refocus ${steps - 1 === 1 ? 'once' : `${steps - 1} times`} between passes.`,
                where: step.depth?.where ?? step.where,
                step: step.index,
                fixes: [
                    {
                        title: 'Add a reminder',
                        changes: [statementBefore(step, `do "lower the focus as ${step.name} gets deeper"`)],
                    },
                ],
            });
        }
    },
};
