import { union } from '../geometry/boolean';
import { type NarrowPlace, narrow } from '../geometry/narrow';
import type { InlayPlan } from '../plan/plan';
import { showLength } from '../quantity/show';
import { keptFor } from './kept';
import type { Page } from './page';
import { finding, type Rule } from './rule';
import { narrowSpots } from './spots';

const page: Page = {
    id: 'parts-vanish',
    title: 'Parts narrower than what the fit takes away',
    condition:
        'A part of the veneer half, or a bridge between two parts, is narrower than what clearance and offset take off both its edges.',
    why: 'Each edge of the veneer gives way by half of the clearance. What is narrower than both halves together is burnt away; where a bridge goes, the parts it held come loose.',
    mend: 'Draw those lines wider, or give less clearance.',
    source: 'Plain geometry of the art and the fit.',
};

export const partsVanish: Rule = {
    page,
    *examine(plan) {
        for (const { inlay } of plan.steps) {
            if (inlay === undefined) continue;
            const taken = 2 * (inlay.reliefLaser.edge + inlay.reliefLaser.growth);
            if (!(taken > 0)) continue;
            const lost = lostPlaces(inlay, taken);
            if (lost.length === 0) continue;
            const whole = lost.filter((place) => place.kind === 'whole').length;
            const necks = lost.length - whole;
            const narrowest = lost[0]!;
            const what = [
                whole > 0 ? `${whole} part${whole === 1 ? '' : 's'}` : '',
                necks > 0 ? `${necks} bridge${necks === 1 ? '' : 's'}` : '',
            ].filter((part) => part !== '');
            yield finding(page, {
                severity: 'warning',
                message: `${what.join(' and ')} of ${inlay.relief.name} vanish${lost.length === 1 ? 'es' : ''}: narrower than the ${showLength(taken)} that the fit takes off both edges, ${showLength(narrowest.width)} at the narrowest (near ${showLength(narrowest.x)}, ${showLength(narrowest.y)}).`,
                where: inlay.relief.placements[0]?.where ?? inlay.relief.where,
                step: inlay.relief.index,
                spots: narrowSpots(inlay.reliefLaser.blank, lost),
            });
        }
    },
};

/** Tips are left out: they only end a little earlier. */
function lostPlaces({ reliefLaser }: InlayPlan, taken: number): NarrowPlace[] {
    const figures = reliefLaser.placed.filter((placed) => placed.inverse).map((placed) => placed.figure);
    const first = figures[0];
    if (first === undefined) return [];
    const key = `narrower ${taken} of ${figures.length}`;
    const find = () => narrow(figures.length === 1 ? first : union(figures), taken).filter((place) => place.kind !== 'tip');
    return figures.length === 1 ? keptFor(first, key, find) : keptFor(reliefLaser.region, key, find);
}
