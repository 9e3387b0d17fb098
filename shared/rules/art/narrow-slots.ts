import { narrow } from '../../geometry/narrow';
import type { NarrowPlace } from '../../geometry/narrow-place';
import { keptFor } from '../../plan/kept';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { narrowSpots } from '../helpers/spots';
import { widenSlots } from '../helpers/widen-slots';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Part of a pocket that may lie in such places without a word: they are ends and corners of its lines. */
const negligible = 0.02;

const page: Page = {
    id: 'narrow-slots',
    title: 'Slots too narrow to fill',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition:
        'Parts of a filled pocket are narrower than the resin flows into without trapping air, and they are more than tips and corners.',
    why: 'Thick resin bridges a narrow slot and leaves a bubble underneath, which sanding opens.',
    mend: 'Draw those lines wider, or give the pocket an `offset`, which widens all its lines by twice as much and is offered where none of them run together. Or burn the art larger, take a thinner resin, or work it in with a toothpick and warm it.',
    source: `${commonPractice} The narrowest slot is the stock’s figure.`,
};

export const narrowSlots: Rule = {
    page,
    followsDrawing: true,
    *examine(plan) {
        for (const { fill, step, blank } of plan.steps) {
            const limit = step.kind === 'fill' ? step.resin?.narrowestSlot?.value : undefined;
            const laser = fill === undefined ? undefined : plan.steps[fill.pocket.index]?.laser;
            const region = laser?.region;
            if (
                fill === undefined ||
                fill.layer.number > 1 || // told at the first layer
                step.kind !== 'fill' ||
                laser === undefined ||
                region === undefined ||
                limit === undefined ||
                !(limit > 0)
            )
                continue;
            const places: NarrowPlace[] = keptFor(region, `slots ${limit}`, () =>
                narrow(region, limit).filter((place) => place.kind !== 'tip'),
            );
            const lost = places.reduce((sum, place) => sum + place.area, 0);
            const narrowest = places[0];
            if (narrowest === undefined || lost < negligible * fill.area) continue;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${places.length} place${places.length === 1 ? '' : 's'} in ${fill.pocket.name} ${places.length === 1 ? 'is' : 'are'} narrower than the ${showLength(limit)} that ${step.resin!.name} flows into, ${showLength(narrowest.width)} at the narrowest (near ${showLength(narrowest.x)}, ${showLength(narrowest.y)}).`,
                where: step.where,
                step: step.index,
                rests: [step.resin?.narrowestSlot?.where],
                related: [
                    { message: phrase`The pocket is drawn here.`, where: fill.pocket.placements[0]?.where ?? fill.pocket.where },
                ],
                spots: blank === undefined ? [] : narrowSpots(blank, places),
                fixes: widenSlots(
                    fill.pocket,
                    laser,
                    places,
                    limit,
                    plan.blanks.find(({ name }) => name === blank),
                ),
            });
        }
    },
};
