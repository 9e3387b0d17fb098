import { subtract } from '../geometry/boolean';
import { area, bounds } from '../geometry/measure';
import { rectangle } from '../geometry/shapes';
import { showArea, showLength } from '../quantity/show';
import { blankOf } from './blank-names';
import { commonPractice, type Page } from './page';
import { finding, type Rule } from './rule';
import { spotsOf } from './spots';

/** Overhang that is rounding rather than a mistake, mm2. */
const negligible = 0.05;

const page: Page = {
    id: 'off-blank',
    title: 'Art off the blank',
    condition: 'A part of what a step burns lies outside its blank.',
    why: 'That part is burnt into the bed, or is missing from the piece.',
    mend: 'Move the art with `at`, make it smaller, or take a larger blank. `at` is where the middle of the art goes, from the blank’s top left corner.',
    source: commonPractice,
};

export const offBlank: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { laser, step } = stepPlan;
            const blank = blankOf(plan, stepPlan);
            if (laser === undefined || blank?.size === undefined || (step.kind !== 'engrave' && step.kind !== 'cut')) continue;
            const box = bounds(laser.region);
            if (box === undefined) continue;
            const { width, height } = blank.size;
            const over = Math.max(-box.minX, -box.minY, box.maxX - width, box.maxY - height);
            if (over <= 0) continue;
            const outside = subtract(laser.region, rectangle(0, 0, width, height));
            const lost = area(outside);
            if (lost <= negligible) continue;
            const placement = step.placements[0];
            const where = placement?.at?.where ?? placement?.where ?? step.where;
            yield finding(page, {
                severity: 'error',
                message: `${showArea(lost)} of ${step.name} lies off ${blank.name}, up to ${showLength(over)} beyond its edge (${blank.name} is ${showLength(width)} by ${showLength(height)}).`,
                where,
                step: step.index,
                spots: spotsOf(blank.name, [outside]),
            });
        }
    },
};
