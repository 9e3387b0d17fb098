import type { NarrowPlace } from '../../geometry/narrow-place';
import type { InlayPlan } from '../../plan/plan';
import { showLength } from '../../quantity/show';
import type { Fix, Related } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Inlay, Step } from '../../recipe/step';
import { lostPlaces, mostTaken } from '../helpers/lost-parts';
import { clearanceFix, offsetFix, offsetsOf } from '../helpers/mend-gap';
import { narrowSpots } from '../helpers/spots';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'parts-vanish',
    title: 'Parts narrower than what the fit takes away',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition:
        'A part of the veneer half, or a bridge between two parts, is narrower than what clearance and offset take off both its edges.',
    why: 'Each edge of the veneer gives way by half of the clearance. What is narrower than both halves together is burnt away; where a bridge goes, the parts it held come loose.',
    mend: 'Draw those lines wider, or give less clearance, but no less than the leaning walls need to reach the floor. An `offset` of the veneer half takes as much again off either edge.',
    source: 'Plain geometry of the art and the fit.',
};

export const partsVanish: Rule = {
    page,
    followsDrawing: true,
    *examine(plan) {
        for (const { inlay, step } of plan.steps) {
            if (inlay === undefined) continue;
            const taken = 2 * (inlay.reliefLaser.edge + inlay.reliefLaser.growth);
            if (!(taken > 0)) continue;
            const lost = lostPlaces(inlay, taken);
            if (lost.length === 0) continue;
            const narrowest = lost[0]!;
            const fixes = step.kind === 'inlay' ? keepingFixes(inlay, step, taken) : [];
            yield finding(page, {
                severity: 'warning',
                message: phrase`${countOf(lost)} of ${inlay.relief.name} vanish${lost.length === 1 ? 'es' : ''}: narrower than the ${showLength(taken)} that the fit takes off both edges, ${showLength(narrowest.width)} at the narrowest (near ${showLength(narrowest.x)}, ${showLength(narrowest.y)}).${noLess(inlay, narrowest.width)}`,
                where: inlay.relief.placements[0]?.where ?? inlay.relief.where,
                step: inlay.relief.index,
                related: related(inlay, step),
                spots: narrowSpots(inlay.reliefLaser.blank, lost),
                fixes,
            });
        }
    },
};

/** Why less clearance is no way out, where it is none. */
function noLess(inlay: InlayPlan, narrowest: number): string {
    const least = inlay.fit?.leastClearance ?? 0;
    const left = narrowest + offsetsOf(inlay) - 2 * (inlay.relief.offset?.value ?? 0);
    if (left >= least) return '';
    return phrase` Less clearance is no way out: the walls need ${showLength(least)} to reach the floor. Draw those lines wider.`;
}

function countOf(lost: readonly NarrowPlace[]): string {
    const whole = lost.filter((place) => place.kind === 'whole').length;
    const necks = lost.length - whole;
    return [
        whole > 0 ? `${whole} part${whole === 1 ? '' : 's'}` : '',
        necks > 0 ? `${necks} bridge${necks === 1 ? '' : 's'}` : '',
    ]
        .filter((part) => part !== '')
        .join(' and ');
}

function related({ relief }: InlayPlan, step: Step): Related[] {
    return [
        ...(step.kind === 'inlay' && step.clearance !== undefined
            ? [{ message: phrase`The clearance is written here.`, where: step.clearance.where }]
            : []),
        ...(relief.offset === undefined ? [] : [{ message: phrase`An offset is written here.`, where: relief.offset.where }]),
    ];
}

/** Less clearance, or less offset of the veneer half, with which nothing vanishes and the walls still let it in. */
function keepingFixes(inlay: InlayPlan, step: Inlay, taken: number): Fix[] {
    const keeps = mostTaken(inlay, taken);
    if (keeps === undefined) return [];
    const least = inlay.fit?.leastClearance ?? 0;
    const offset = inlay.relief.offset?.value ?? 0;
    const others = offsetsOf(inlay) - offset;
    const most = keeps - 2 * offset;
    const mostOffset = (keeps - inlay.clearance) / 2;
    return [
        ...clearanceFix(step, { low: least - offsetsOf(inlay), high: most, best: most }),
        ...offsetFix(inlay.relief, { low: least - inlay.clearance - others, high: mostOffset, best: mostOffset }),
    ];
}
