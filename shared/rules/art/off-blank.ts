import { subtract } from '../../geometry/boolean';
import { area, bounds } from '../../geometry/measure';
import { rectangle } from '../../geometry/shapes';
import type { LaserPlan } from '../../plan/laser-plan';
import { showArea, showLength } from '../../quantity/show';
import type { Change, Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import { pickText } from '../../recipe/pick-text';
import type { Cut, Engrave } from '../../recipe/step';
import { roundLength } from '../helpers/ask-depth';
import { blankOf } from '../helpers/blank-names';
import { spotsOf } from '../helpers/spots';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Overhang that is rounding rather than a mistake, mm2. */
const negligible = 0.05;

const page: Page = {
    id: 'off-blank',
    title: 'Art off the blank',
    severities: ['error'],
    quickFix: 'sometimes',
    condition: 'A part of what a step burns lies outside its blank.',
    error: 'Always: that part cannot be on the piece.',
    why: 'That part is burnt into the bed, or is missing from the piece.',
    mend: 'Move the art with `at`, make it smaller, or take a larger blank. `at` is where the middle of the art goes, from the blank’s top left corner. A part that is picked out of a drawing (`art heron #reeds`) keeps its place in it: the middle of the whole drawing goes to `at`, or to the blank’s middle where nothing is said, and a part from its rim may come to lie off a small blank. The quick fix writes the `at` with which the part’s own middle lies there.',
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
            const where = placement?.places?.where ?? placement?.at?.where ?? placement?.where ?? step.where;
            const own = ownMiddle(step, laser, blank.size, box);
            const fixes = placement === undefined ? [] : [...(own?.fixes ?? []), ...movedOn(step, laser, blank.size, box)];
            const mend =
                box.maxX - box.minX > width || box.maxY - box.minY > height
                    ? phrase`: it takes ${showLength(box.maxX - box.minX)} by ${showLength(box.maxY - box.minY)}`
                    : '';
            yield finding(page, {
                severity: 'error',
                message: phrase`${showArea(lost)} of ${step.name} lies off ${blank.name}, up to ${showLength(over)} beyond its edge (${blank.name} is ${showLength(width)} by ${showLength(height)})${mend}.${own?.why ?? ''}`,
                where,
                step: step.index,
                fixes,
                spots: spotsOf(blank.name, [outside]),
            });
        }
    },
};

type Size = { readonly width: number; readonly height: number };
type Point = { readonly x: number; readonly y: number };
type Box = NonNullable<ReturnType<typeof bounds>>;

/**
 * Picked parts go with the middle of their whole drawing: says so, and lays the parts' own middle where that was meant to be, or
 * on the blank's middle. Undefined where they are not to blame, or have no room there either.
 */
function ownMiddle(
    step: Engrave | Cut,
    { placed }: LaserPlan,
    { width, height }: Size,
    box: Box,
): { readonly why: string; readonly fixes: Fix[] } | undefined {
    const [only, ...others] = step.placements;
    const [lying] = placed;
    if (only?.kind !== 'art' || only.places !== undefined || only.picks.length === 0 || others.length > 0 || lying === undefined)
        return undefined;
    const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
    const [halfWidth, halfHeight] = [(box.maxX - box.minX) / 2, (box.maxY - box.minY) / 2];
    const unit = only.at?.x.unit ?? 'mm';
    const fits = (middle: Point): boolean =>
        middle.x >= halfWidth && middle.x <= width - halfWidth && middle.y >= halfHeight && middle.y <= height - halfHeight;
    const round = (mm: number): number => roundLength(mm, unit, 'down');
    const at = [lying.centre, { x: width / 2, y: height / 2 }]
        .map((middle) => ({ x: round(lying.centre.x + middle.x - x), y: round(lying.centre.y + middle.y - y) }))
        .find((to) => fits({ x: x + to.x - lying.centre.x, y: y + to.y - lying.centre.y }));
    if (at === undefined) return undefined;
    const parts = only.picks.map(({ value }) => pickText(value)).join(', ');
    const name = only.art.value ?? 'the art';
    const text = `${showLength(at.x, unit).replace(` ${unit}`, '')}, ${showLength(at.y, unit)}`;
    const last = only.inverse?.where ?? (only.leaves?.at(-1) ?? only.picks.at(-1)!).where;
    const change: Change =
        only.at === undefined
            ? { do: 'replace', where: { uri: last.uri, offset: last.offset + last.length, length: 0 }, text: ` at ${text}` }
            : { do: 'replace', where: only.at.where, text };
    return {
        why: ` ${parts} keep${only.picks.length === 1 ? 's' : ''} ${only.picks.length === 1 ? 'its' : 'their'} place in ${name}, and the middle of all of ${name} lies at ${showLength(lying.centre.x, unit)}, ${showLength(lying.centre.y, unit)}.`,
        fixes: [{ title: phrase`Lay the middle of ${parts} there (at ${text})`, preferred: true, changes: [change] }],
    };
}

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
    return [{ title: phrase`Move it to ${text}`, changes: [{ do: 'replace', where: only.at.where, text }] }];
}
