import { subtract } from '../geometry/boolean';
import { area, bounds } from '../geometry/measure';
import { rectangle } from '../geometry/shapes';
import type { LaserPlan } from '../plan/laser-plan';
import { showArea, showLength } from '../quantity/show';
import type { Fix } from '../recipe/finding';
import type { Cut, Engrave } from '../recipe/step';
import { roundLength } from './ask-depth';
import { blankOf } from './blank-names';
import { commonPractice, type Page } from './page';
import { finding, type Rule } from './rule';
import { spotsOf } from './spots';

/** Overhang that is rounding rather than a mistake, mm2. */
const negligible = 0.05;

const page: Page = {
    id: 'off-blank',
    title: 'Art off the blank',
    severities: ['error'],
    quickFix: 'sometimes',
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
            const fixes = placement === undefined ? [] : movedOn(step, laser, blank.size, box);
            const mend =
                box.maxX - box.minX > width || box.maxY - box.minY > height
                    ? `: it takes ${showLength(box.maxX - box.minX)} by ${showLength(box.maxY - box.minY)}`
                    : '';
            yield finding(page, {
                severity: 'error',
                message: `${showArea(lost)} of ${step.name} lies off ${blank.name}, up to ${showLength(over)} beyond its edge (${blank.name} is ${showLength(width)} by ${showLength(height)})${mend}.`,
                where,
                step: step.index,
                fixes,
                spots: spotsOf(blank.name, [outside]),
            });
        }
    },
};

type Size = { readonly width: number; readonly height: number };
type Box = NonNullable<ReturnType<typeof bounds>>;

/** Moves the only placement of a step as far as it takes, where it fits at all. */
function movedOn(step: Engrave | Cut, { placed }: LaserPlan, { width, height }: Size, box: Box): Fix[] {
    const [only, ...others] = step.placements;
    const centre = placed[0]?.centre;
    if (only?.at === undefined || only.repeat !== undefined || others.length > 0 || centre === undefined) return [];
    if (step.mirror.length % 2 === 1 || box.maxX - box.minX > width || box.maxY - box.minY > height) return [];
    const { unit } = only.at.x;
    const moved = (low: number, high: number, most: number, at: number): number => {
        if (low < 0) return roundLength(at - low, unit, 'up');
        return high > most ? roundLength(at - (high - most), unit, 'down') : at;
    };
    const x = moved(box.minX, box.maxX, width, centre.x);
    const y = moved(box.minY, box.maxY, height, centre.y);
    const text = `${showLength(x, unit).replace(` ${unit}`, '')}, ${showLength(y, unit)}`;
    return [{ title: `Move it to ${text}`, changes: [{ do: 'replace', where: only.at.where, text }] }];
}
