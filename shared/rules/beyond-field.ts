import { bounds } from '../geometry/measure';
import { showLength } from '../quantity/show';
import type { Page } from './page';
import { finding, type Rule } from './rule';

const page: Page = {
    id: 'beyond-field',
    title: 'Larger than the machine’s field',
    severities: ['error', 'warning'],
    condition: 'What a step burns is larger than the field of the recipe’s laser.',
    why: 'The machine stops at its end, or runs against it, and the art is cut off there.',
    mend: 'Make the art smaller, turn the blank if it fits the other way, divide the step into two with marks between them, or use a larger machine.',
    source: 'Plain arithmetic: the art’s size against the field.',
};

export const beyondField: Rule = {
    page,
    *examine(plan) {
        const { laser: machine } = plan.recipe;
        if (machine?.field === undefined) return;
        const field = { width: machine.field.width.value, height: machine.field.height.value };
        for (const { laser, step } of plan.steps) {
            if (laser === undefined || (step.kind !== 'engrave' && step.kind !== 'cut')) continue;
            const box = bounds(laser.region);
            if (box === undefined) continue;
            const width = box.maxX - box.minX;
            const height = box.maxY - box.minY;
            if (width <= field.width && height <= field.height) continue;
            const turned = width <= field.height && height <= field.width;
            yield finding(page, {
                severity: turned ? 'warning' : 'error',
                message: `${step.name} is ${showLength(width)} by ${showLength(height)}; ${machine.name} reaches ${showLength(field.width)} by ${showLength(field.height)}${turned ? ', so the blank has to lie the other way round' : ''}.`,
                where: step.placements[0]?.where ?? step.where,
                step: step.index,
                related: [{ message: 'The field is written here.', where: machine.field.where }],
            });
        }
    },
};
