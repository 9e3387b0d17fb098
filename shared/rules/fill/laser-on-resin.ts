import { intersect } from '../../geometry/boolean';
import { area } from '../../geometry/measure';
import { showArea } from '../../quantity/show';
import type { Step } from '../../recipe/step';
import { elapsed, longEnough } from '../helpers/elapsed';
import { pieceBefore } from '../helpers/piece-at';
import type { Page } from '../page';
import { finding, type Rule, type Said } from '../rule';

/** Overlap that is the edge of a neighbour rather than a burn into the resin, mm2. */
const negligible = 1;

const page: Page = {
    id: 'laser-on-resin',
    title: 'Laser on resin',
    severities: ['warning', 'error'],
    quickFix: 'always',
    condition:
        'A blank goes back under the laser after it has been filled: before the resin has cured, or so that the beam runs over the fill.',
    why: 'Burnt resin gives off vapours that harm; uncured, it is a flammable liquid as well. Metal powder in it throws the beam back.',
    mend: 'Do all of the laser’s work before any resin is near it. If it cannot be otherwise, let it cure and keep the beam off it; the resin’s data sheet and the machine’s manual come first.',
    source: 'Epoxy and resins are on a university’s list of what must not be put under a laser (seen); the rest is common practice, no source.',
};

export const laserOnResin: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, laser } of plan.steps) {
            if (laser === undefined || (step.kind !== 'engrave' && step.kind !== 'cut')) continue;
            const poured: { readonly finding: Omit<Said, 'fixes'>; readonly first: Step }[] = [];
            for (const mark of pieceBefore(plan, step.index, blank)?.marks ?? []) {
                const fill = mark.content === undefined ? undefined : plan.steps[mark.content.step]?.step;
                if (mark.content?.kind !== 'resin' || fill?.kind !== 'fill') continue;
                const cure = fill.resin?.cure;
                const cured =
                    cure === undefined || longEnough(elapsed(plan, fill.index, step.index), cure.value - cure.tolerance);
                const over = step.kind === 'cut' ? 0 : area(intersect(laser.region, mark.region));
                if (cured && over <= negligible) continue;
                const how = cured
                    ? `runs over ${showArea(over)} of ${mark.content.name}`
                    : `works while ${mark.content.name} has not cured`;
                const said = {
                    severity: cured ? 'warning' : 'error',
                    message: `The laser ${how}: resin must not be burnt.`,
                    where: step.where,
                    step: step.index,
                    related: [{ message: 'The resin is poured here.', where: fill.where }],
                } as const;
                const pocket = plan.steps[mark.content.step]?.fill?.pocket.index;
                poured.push({
                    finding: said,
                    first: plan.steps.find((other) => other.fill?.pocket.index === pocket)?.step ?? fill,
                });
            }
            // Before all of them, whichever of them is looked at.
            const [first] = poured.map((one) => one.first).toSorted((a, b) => a.index - b.index);
            for (const one of poured)
                yield finding(page, {
                    ...one.finding,
                    fixes: [
                        {
                            title: `Do ${step.name} before the fill`,
                            changes: [{ do: 'move', statement: step.whole, before: first!.whole }],
                        },
                    ],
                });
        }
    },
};
