import { intersect } from '../../geometry/boolean';
import { area } from '../../geometry/measure';
import type { Region } from '../../geometry/region';
import type { Cell } from '../../piece/face';
import { boxed, boxesMeet } from '../../piece/partition';
import { keptFor, nameOf as keyOf } from '../../plan/kept';
import type { InlayPlan, Plan } from '../../plan/plan';
import { isWiderThanRim } from '../../plan/veneer-half';
import { showArea } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { faceBefore, nameOf, negligible } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'glued-under',
    title: 'Work on the side that is glued down',
    severities: ['warning'],
    condition: 'A veneer half carries a tone, an engraving or a fill where it is left standing, on the side that is glued down.',
    why: 'The half is turned over: the side that was burnt lies in the pocket afterwards, and nobody sees what is on it. A hollow there carries nothing either.',
    mend: 'Burn or fill it on the board, once the inlay is sanded flush. Marks by which parts are told apart belong beside the part.',
    source: 'Plain geometry of turning over.',
};

export const gluedUnder: Rule = {
    page,
    *examine(plan) {
        const said = new Set<number>();
        for (const { step, inlay } of plan.steps) {
            if (inlay === undefined || !inlay.turnedOver) continue;
            const { relief, reliefLaser, pocketLaser } = inlay;
            for (const [index, regions] of hidden(plan, step.index, inlay)) {
                const work = plan.steps[index]?.step;
                if (work === undefined || said.has(index)) continue;
                said.add(index);
                const filled = plan.steps.find(({ fill }) => fill?.pocket.index === index && fill !== undefined)?.step;
                const size = regions.reduce((sum, region) => sum + area(region), 0);
                const poured = filled?.kind === 'fill' && filled.index < step.index ? filled : undefined;
                const what =
                    poured === undefined ? nameOf(work) : phrase`${nameOf(work)} with ${poured.resin?.name ?? phrase`its fill`}`;
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`${showArea(size)} of ${what} lie on the side of ${reliefLaser.blank} that goes down when ${relief.name} is glued in: they are not seen. Do that on ${pocketLaser.blank}, once the inlay is sanded flush.`,
                    where: work.where,
                    step: index,
                    spots: spotsOf(reliefLaser.blank, regions),
                    related: [
                        { message: phrase`${relief.name} is glued in here, turned over.`, where: step.where },
                        ...(poured === undefined ? [] : [{ message: phrase`It is filled here.`, where: poured.where }]),
                    ],
                });
            }
        }
    },
};

/** What of a half lies under it once it is laid, by the step that burnt it. */
function hidden(plan: Plan, laid: number, { relief, reliefLaser, standing, half }: InlayPlan): Map<number, Region[]> {
    const found = new Map<number, Region[]>();
    const box = boxed(standing)?.box;
    for (const cell of faceBefore(plan, laid, reliefLaser.blank)?.cells ?? []) {
        const by = workOn(cell, relief.index, half.dugBy);
        if (by === undefined || box === undefined || !boxesMeet(cell.box, box)) continue;
        const region = keptFor(cell.region, `in ${keyOf(standing)}`, () => intersect(cell.region, standing));
        // Two burns with other clearances leave a rim.
        if (area(region) <= negligible || !isWiderThanRim(region)) continue;
        found.set(by, [...(found.get(by) ?? []), region]);
    }
    return found;
}

/** The step whose work lies open in a place, or below what was poured into it; not the half's own burn, nor one that took all of it down. */
function workOn({ column }: Cell, own: number, all: readonly number[]): number | undefined {
    if (column.digs.some(({ step }) => step === own)) return undefined;
    return column.tone ?? column.digs.findLast(({ step, depth }) => depth.value > 0 && !all.includes(step))?.step;
}
