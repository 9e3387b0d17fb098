import { area } from '../../geometry/measure';
import { hollowFloor } from '../../piece/column';
import type { LaserPlan } from '../../plan/laser-plan';
import type { Plan } from '../../plan/plan';
import { type Interval, subtract } from '../../quantity/interval';
import { showLength } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { atItsWord, type Figures } from '../figures';
import { askDepth, depthUnit } from '../helpers/ask-depth';
import { type Content, contentsOf } from '../helpers/contents';
import { faceAfter, faceBefore } from '../helpers/face-at';
import { depthForFill, leastFillLeft as leastLeft } from '../helpers/fill-depth';
import { sandLess } from '../helpers/sanding-off';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'fill-sanded-away',
    title: 'Sanding takes the fill away',
    severities: ['warning', 'error'],
    quickFix: 'sometimes',
    condition: `After sanding, less than ${leastLeft} mm of a fill is left, or none at all, with depth and sanding at the bad end.`,
    error: 'The sanding takes as much as the pocket is deep, at what is expected and not only at the bad end: no resin is left.',
    why: 'Sanding takes the spilled resin and the scorch off the face, and as much off the fill. A skin of resin is see-through and chips out.',
    mend: 'Engrave deeper than the finished depth, or sand less off the face.',
    source: commonPractice,
};

export const fillSandedAway: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const [index, { step, blank, sand }] of plan.steps.entries()) {
            if (sand === undefined || step.kind !== 'sand' || sand.below.value <= 0) continue;
            const face = faceAfter(plan, index, blank)?.level;
            if (face === undefined) continue;
            for (const content of contentsOf(plan, faceBefore(plan, index, blank))) {
                const laser = plan.steps[content.pocket]?.laser;
                if (content.kind !== 'resin' || laser?.depth === undefined) continue;
                const floor = mostOfIt(content);
                const left = subtract(floor, face);
                if (left.low >= leastLeft) continue;
                const gone = left.value <= 0;
                const carved = plan.steps[content.pocket]?.step;
                const name = carved !== undefined && 'name' in carved ? carved.name : phrase`the pocket`;
                const { unit, fixes, mend } = deeper(plan, carved, laser, figures);
                yield finding(page, {
                    severity: gone ? 'error' : 'warning',
                    message: gone
                        ? phrase`Sanding takes ${showLength(face.value)} off the face in all, and ${name} is ${showLength(floor.value, unit)} deep: all of ${content.name} goes${mend}`
                        : phrase`After sanding ${showLength(left.value)} of ${content.name} is left in ${name}, ${showLength(Math.max(0, left.low))} at worst; ${showLength(leastLeft)} should stay${mend}`,
                    where: step.take?.where ?? step.where,
                    step: step.index,
                    fixes: [...fixes, ...sandLess(page.id, step, leastLeft - left.low, figures)],
                    related: carved === undefined ? [] : [{ message: phrase`${name} is engraved here.`, where: carved.where }],
                });
            }
        }
    },
};

/** What to ask of the pocket instead, in the unit that its depth is written in. */
function deeper(
    plan: Plan,
    carved: Step | undefined,
    laser: LaserPlan,
    figures: Figures,
): { readonly unit: string; readonly fixes: readonly Fix[]; readonly mend: string } {
    if (carved?.kind !== 'engrave') return { unit: 'mm', fixes: [], mend: '.' };
    const { text, fixes, instead } = askDepth(page.id, carved, depthForFill(plan, carved, laser), plan, figures);
    const mend = `${text === undefined ? '' : phrase`; ${text} deep would leave enough`}.${instead}`;
    return { unit: depthUnit(carved), fixes, mend };
}

/** The floor below most of a fill, from the blank's first face down. */
function mostOfIt({ places }: Content): Interval {
    const floors = places.map(({ cell: { region, column }, layer }) => {
        const layers = column.layers.slice(column.layers.indexOf(layer));
        return { size: area(region), floor: hollowFloor({ ...column, layers }) };
    });
    return floors.reduce((a, b) => (b.size > a.size ? b : a)).floor;
}
