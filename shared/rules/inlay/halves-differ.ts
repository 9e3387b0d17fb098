import { subtract, union } from '../../geometry/boolean';
import { area, isEmpty } from '../../geometry/measure';
import { grow } from '../../geometry/offset';
import { type Region, tangledRegion } from '../../geometry/region';
import { keptFor } from '../../plan/kept';
import type { InlayPlan, LaserStep, Plan } from '../../plan/plan';
import { showArea } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { differenceOf } from '../helpers/half-differences';
import { halfNoun } from '../helpers/half-noun';
import { spotsOf } from '../helpers/spots';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';
import { reachesBeyond } from './beyond-boundary';
import { meetWithin } from './veneers-meet';

/** Bands thinner than this along an edge are flattening and beam, not another shape; mm. */
const thin = 0.1;

const page: Page = {
    id: 'halves-differ',
    title: 'The two halves differ',
    severities: ['error', 'warning'],
    quickFix: 'sometimes',
    condition:
        'Mirrored and inverse as it should be, the veneer half still does not have the pocket’s shape: other art, other parts of it, another size or another turn.',
    error: 'Veneer lies over the board, which holds the whole inlay out of its pocket. A hole that stays is a warning.',
    why: 'Where veneer lies over the board it holds the whole inlay up; where the pocket has no veneer a hole stays.',
    mend: 'Use the same art, the same parts and the same turn in both halves. Where they lie on their blanks does not matter.',
    source: commonPractice,
};

export const halvesDiffer: Rule = {
    page,
    *examine(plan) {
        for (const { inlay, step } of plan.steps) {
            if (inlay === undefined || !comparable(inlay)) continue;
            // The beam's width is taken off what is drawn, and where it is wider than the clearance the drawn halves overlap.
            const { pocketLaser, reliefLaser } = inlay;
            // What is cut out is drawn smaller by all of the gap, which is wider at a point: up to 2.5 times where it is of 47 degrees.
            const corners = inlay.relief.kind === 'cut' ? 1.5 * Math.max(0, inlay.gap) : 0;
            const band = corners + thin + Math.max(0, -pocketLaser.edge - reliefLaser.edge) + Math.max(0, inlay.gap);
            const over = thick(inlay.collides, band);
            const uncovered = uncoveredOf(plan, inlay);
            const bare = thick(uncovered, band);
            if (over === 0 && bare === 0) continue;
            const parts = [
                over > 0 ? `${showArea(over)} of the ${halfNoun(inlay)} would lie on the board` : '',
                bare > 0 ? `${showArea(bare)} of the pocket would stay empty` : '',
            ].filter((part) => part !== '');
            const { words, fixes } = differenceOf(plan, inlay);
            if (words === '' && reachesBeyond(reliefLaser)) continue; // beyond-boundary says it
            const placement = inlay.relief.placements.find((candidate) => candidate.kind === 'art');
            yield finding(page, {
                severity: over > 0 ? 'error' : 'warning',
                message: phrase`The halves ${inlay.relief.name} and ${inlay.pocket.name} differ${words}: ${parts.join(', and ')}.`,
                where: placement?.where ?? inlay.relief.where,
                step: inlay.relief.index,
                related: [
                    { message: phrase`The pocket is here.`, where: inlay.pocket.placements[0]?.where ?? inlay.pocket.where },
                    { message: phrase`They meet here.`, where: step.where },
                ],
                spots: spotsOf(pocketLaser.blank, [over > 0 ? inlay.collides : uncovered]),
                fixes,
            });
        }
    },
};

/** The mistakes that come before this one have rules of their own. */
function comparable({ relief, pocket, reliefLaser }: InlayPlan): boolean {
    if (relief.kind === 'cut') return reliefLaser.placed.every((placed) => !placed.inverse);
    const odd = (half: LaserStep): boolean => half.mirror.length % 2 === 1;
    return odd(relief) !== odd(pocket) && reliefLaser.placed.every((placed) => placed.inverse);
}

/** What of a pocket no veneer covers: several woods may share one. */
function uncoveredOf(plan: Plan, { pocket, pocketLaser, empty }: InlayPlan): Region {
    const all = plan.steps.flatMap(({ inlay }) => (inlay?.pocket.index === pocket.index ? [inlay.turned] : []));
    return all.length === 1 ? empty : subtract(pocketLaser.region, withSeams(union(all)));
}

/** Veneers with the seams between them, of which veneers-meet speaks. */
function withSeams(veneers: Region): Region {
    return keptFor(veneers, 'with seams', () => {
        const grown = grow(veneers, meetWithin / 2);
        const closed = grown === tangledRegion ? veneers : grow(grown, -meetWithin / 2);
        return closed === tangledRegion ? veneers : union([veneers, closed]);
    });
}

/** Area of what is thicker than a band along an edge, mm2; 0 when there is none. */
function thick(region: Region, band: number): number {
    return keptFor(region, `thicker ${band}`, () => (isEmpty(grow(region, -band / 2)) ? 0 : area(region)));
}
