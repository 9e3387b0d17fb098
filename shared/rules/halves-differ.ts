import { subtract, union } from '../geometry/boolean';
import { area, isEmpty } from '../geometry/measure';
import { grow } from '../geometry/offset';
import type { Region } from '../geometry/region';
import type { LaserPlan } from '../plan/laser-plan';
import type { InlayPlan, Plan } from '../plan/plan';
import { showArea, showLength } from '../quantity/show';
import type { Engrave, Placement } from '../recipe/step';
import { keptFor } from './kept';
import { commonPractice, type Page } from './page';
import { finding, type Rule } from './rule';
import { spotsOf } from './spots';

/** Bands thinner than this along an edge are flattening and beam, not another shape; mm. */
const thin = 0.1;

const page: Page = {
    id: 'halves-differ',
    title: 'The two halves differ',
    severities: ['error', 'warning'],
    condition:
        'Mirrored and inverse as it should be, the veneer half still does not have the pocket’s shape: other art, other parts of it, another size or another turn.',
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
            const band = thin + Math.max(0, -pocketLaser.edge - reliefLaser.edge) + inlay.clearance;
            const over = thick(inlay.collides, band);
            const uncovered = uncoveredOf(plan, inlay);
            const bare = thick(uncovered, band);
            if (over === 0 && bare === 0) continue;
            const parts = [
                over > 0 ? `${showArea(over)} of the veneer would lie on the board` : '',
                bare > 0 ? `${showArea(bare)} of the pocket would stay empty` : '',
            ].filter((part) => part !== '');
            const placement = inlay.relief.placements.find((candidate) => candidate.kind === 'art');
            yield finding(page, {
                severity: over > 0 ? 'error' : 'warning',
                message: `The halves ${inlay.relief.name} and ${inlay.pocket.name} differ${why(plan, inlay)}: ${parts.join(', and ')}.`,
                where: placement?.where ?? inlay.relief.where,
                step: inlay.relief.index,
                related: [
                    { message: 'The pocket is here.', where: inlay.pocket.placements[0]?.where ?? inlay.pocket.where },
                    { message: 'They meet here.', where: step.where },
                ],
                spots: spotsOf(pocketLaser.blank, [over > 0 ? inlay.collides : uncovered]),
            });
        }
    },
};

/** The mistakes that come before this one have rules of their own. */
function comparable({ relief, pocket, reliefLaser }: InlayPlan): boolean {
    const odd = (half: Engrave): boolean => half.mirror.length % 2 === 1;
    return odd(relief) !== odd(pocket) && reliefLaser.placed.every((placed) => placed.inverse);
}

/** What of a pocket no veneer covers: several woods may share one. */
function uncoveredOf(plan: Plan, { pocket, pocketLaser, empty }: InlayPlan): Region {
    const all = plan.steps.flatMap(({ inlay }) => (inlay?.pocket.index === pocket.index ? [inlay.turned] : []));
    return all.length === 1 ? empty : subtract(pocketLaser.region, union(all));
}

/** Area of what is thicker than a band along an edge, mm2; 0 when there is none. */
function thick(region: Region, band: number): number {
    return keptFor(region, `thicker ${band}`, () => (isEmpty(grow(region, -band / 2)) ? 0 : area(region)));
}

function why(plan: Plan, { relief, pocket, reliefLaser, pocketLaser }: InlayPlan): string {
    const art = (half: Engrave) => half.placements.flatMap((placement) => (placement.kind === 'art' ? [placement] : []));
    const [one, other] = [art(relief), art(pocket)];
    const names = (half: typeof one) => half.map((placement) => placement.art.value ?? '').join(', ');
    const files = (half: typeof one) =>
        half.map((placement) => plan.recipe.arts.find(({ name }) => name === placement.art.value)?.uri ?? '').join(' ');
    const picks = (half: typeof one) => half.flatMap((placement) => placement.picks.map((pick) => pick.value)).join(' ');
    const turns = (half: typeof one) => half.map((placement) => placement.turn?.value ?? 0).join(' ');
    if (names(one) !== names(other)) {
        const what = files(one) === files(other) ? 'the size of their art' : 'their art';
        return ` in ${what} (${names(one)}; ${names(other)})`;
    }
    if (picks(one) !== picks(other)) return ` in the parts of ${names(one)} (${picks(one) || 'all'}; ${picks(other) || 'all'})`;
    if (turns(one) !== turns(other)) return ' in their turn';
    const sizes = (half: Engrave) => half.placements.map(shapeWords).filter((words) => words !== '');
    if (sizes(relief).join() !== sizes(pocket).join()) {
        return ` in their shapes (${sizes(relief).join(', ') || 'none'}; ${sizes(pocket).join(', ') || 'none'})`;
    }
    return samePlaces(reliefLaser, pocketLaser) ? '' : ' in where their parts lie to each other';
}

function shapeWords(placement: Placement): string {
    if (placement.kind === 'art') return '';
    const { outline } = placement;
    if (outline.kind === 'circle') return `circle ${showLength(outline.diameter.value)}`;
    return `rectangle ${showLength(outline.size.width.value)} x ${showLength(outline.size.height.value)}`;
}

/** Whether the placements of both halves lie alike to each other; where all of them lie on their blanks does not matter. */
function samePlaces(relief: LaserPlan, pocket: LaserPlan): boolean {
    const [one, other] = [relief.placed, pocket.placed];
    const [from, to] = [one[0]?.centre, other[0]?.centre];
    if (one.length !== other.length || from === undefined || to === undefined) return true; // told otherwise, or not known
    return one.every(({ centre }, index) => {
        const there = other[index]!.centre;
        return Math.hypot(centre.x - from.x - (there.x - to.x), centre.y - from.y - (there.y - to.y)) < thin;
    });
}
