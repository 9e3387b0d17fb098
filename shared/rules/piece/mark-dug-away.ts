import { intersect } from '../../geometry/boolean';
import { area } from '../../geometry/measure';
import type { Region } from '../../geometry/region';
import { boxed, boxesMeet } from '../../piece/partition';
import { showArea } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { faceBefore, negligible } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'mark-dug-away',
    title: 'A pocket takes a mark away',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: 'An engraving with a depth is dug where an earlier one has only coloured the wood.',
    why: 'A colour lies in the outermost tenth of a millimetre. What is dug there afterwards takes it along.',
    mend: 'Keep them apart; or dig first and colour afterwards, if the floor is to be dark.',
    source: commonPractice,
};

export const markDugAway: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, laser } of plan.steps) {
            if (step.kind !== 'engrave' || laser === undefined || laser.through || step.depth === undefined) continue;
            const face = faceBefore(plan, step.index, blank);
            if (face === undefined || blank === undefined) continue;
            const dug = boxed(laser.region);
            const lost = new Map<number, Region[]>();
            for (const { region, box, column } of face.cells) {
                if (dug === undefined || column.tone === undefined || !boxesMeet(box, dug.box)) continue;
                const here = intersect(region, dug.region);
                if (here.rings.length > 0) lost.set(column.tone, [...(lost.get(column.tone) ?? []), here]);
            }
            for (const [index, regions] of lost) {
                const toned = plan.steps[index]?.step;
                const size = regions.reduce((sum, region) => sum + area(region), 0);
                if (toned?.kind !== 'engrave' || size <= negligible) continue;
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`${step.name} digs away ${showArea(size)} of ${toned.name}, which only colours the wood. Move them apart, or dig first and colour afterwards.`,
                    where: step.where,
                    step: step.index,
                    spots: spotsOf(blank, regions),
                    related: [{ message: phrase`${toned.name} is coloured here.`, where: toned.where }],
                    fixes: plan.steps.slice(index + 1, step.index).every((other) => other.blank !== blank)
                        ? [
                              {
                                  title: phrase`Do ${step.name} before ${toned.name}`,
                                  changes: [{ do: 'move', statement: step.whole, before: toned.whole }],
                              },
                          ]
                        : [],
                });
            }
        }
    },
};
