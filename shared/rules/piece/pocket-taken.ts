import { intersect } from '../../geometry/boolean';
import { area } from '../../geometry/measure';
import { grow } from '../../geometry/offset';
import { type Region, tangledRegion } from '../../geometry/region';
import type { InlayPlan } from '../../plan/plan';
import { showArea } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { faceBefore, nameOf, negligible } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'pocket-taken',
    title: 'Pocket that is taken',
    severities: ['error'],
    condition: 'An inlay is laid into a pocket in which something has been poured or laid since it was burnt.',
    error: 'Always: where something is, nothing else can be laid.',
    why: 'The veneer does not come down to the floor: it stands on what is there and is sanded away.',
    mend: 'Leave out what was put in first, or burn the pocket once that has cured and is sanded.',
    source: 'Plain arithmetic.',
};

export const pocketTaken: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, inlay } of plan.steps) {
            if (inlay === undefined || blank === undefined) continue;
            const { pocket } = inlay;
            const taken = (faceBefore(plan, step.index, blank)?.cells ?? []).flatMap(({ region, column }) => {
                if (!column.digs.some((dig) => dig.step === pocket.index)) return [];
                const put = column.layers.find(({ kind, step: by }) => {
                    const { fill, inlay: other } = plan.steps[by ?? -1] ?? {};
                    // What came out of a pocket across this one is told where the two are burnt, or poured.
                    return kind !== 'glue' && (fill ?? other)?.pocket.index === pocket.index;
                });
                if (put === undefined) return [];
                // Two woods may share a pocket side by side.
                const first = plan.steps[put.step ?? -1]?.inlay;
                return [{ region: intersect(region, first === undefined ? inlay.fits : withoutRims(inlay, first)), put }];
            });
            const size = taken.reduce((sum, { region }) => sum + area(region), 0);
            const first = taken[0]?.put;
            if (size <= negligible || first === undefined) continue;
            const put = plan.steps[first.step ?? -1]?.step;
            yield finding(page, {
                severity: 'error',
                message: phrase`${first.name} lies in ${showArea(size)} of ${nameOf(pocket)} already: what is inlaid stands on it. Leave that out, or burn ${nameOf(pocket)} afterwards.`,
                where: step.where,
                step: step.index,
                spots: spotsOf(
                    blank,
                    taken.map(({ region }) => region),
                ),
                related: put === undefined ? [] : [{ message: phrase`${first.name} goes in here.`, where: put.where }],
            });
        }
    },
};

/** A veneer without what the beam's width takes off its own edge and off its neighbour's: where both meet, the painted edges overlap. */
function withoutRims({ fits, reliefLaser }: InlayPlan, first: InlayPlan): Region {
    const both = reliefLaser.growth + first.reliefLaser.growth;
    const left = both > 0 ? grow(fits, -both) : fits;
    return left === tangledRegion ? fits : left;
}
