import { intersect } from '../../geometry/boolean';
import { area } from '../../geometry/measure';
import type { Region } from '../../geometry/region';
import { keptFor, nameOf as keyOf } from '../../plan/kept';
import { seenAs } from '../../plan/lies';
import type { InlayPlan } from '../../plan/plan';
import { showArea } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { nameOf, negligible } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'laid-already',
    title: 'Burnt when it is glued in already',
    severities: ['error'],
    condition: 'The laser works on a veneer half that has been glued into its pocket by then.',
    error: 'Always: what is to be burnt can no longer be put under the laser.',
    why: 'It lies face down in another blank: nothing of it is left to be put under the laser.',
    mend: 'Burn it on the board, once the inlay is sanded flush, or on another place of the veneer.',
    source: 'Plain geometry of turning over.',
};

export const laidAlready: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, laser } of plan.steps) {
            if (laser === undefined || blank === undefined) continue;
            for (const { step: glued, inlay } of plan.steps) {
                if (inlay === undefined || glued.index > step.index || inlay.reliefLaser.blank !== blank) continue;
                const lost = onLaid(seenAs(laser, inlay.reliefLaser, plan).region, inlay);
                const size = area(lost);
                if (size <= negligible) continue;
                const { relief, pocketLaser } = inlay;
                yield finding(page, {
                    severity: 'error',
                    message: phrase`${relief.name} of ${blank} is glued into ${pocketLaser.blank} by then${inlay.turnedOver ? phrase`, face down` : ''}: ${showArea(size)} of ${nameOf(step)} have nothing left to burn. Burn ${nameOf(step)} on ${pocketLaser.blank}, once that is sanded flush.`,
                    where: step.where,
                    step: step.index,
                    spots: spotsOf(blank, [lost]),
                    related: [{ message: phrase`${relief.name} is glued in here.`, where: glued.where }],
                });
                break;
            }
        }
    },
};

/** What of a region falls on a half that has been laid: on the part that stood, or anywhere where that still hangs together with the rest. */
function onLaid(region: Region, { reliefLaser, standing }: InlayPlan): Region {
    if (!reliefLaser.through) return region;
    return keptFor(region, `in ${keyOf(standing)}`, () => intersect(region, standing));
}
