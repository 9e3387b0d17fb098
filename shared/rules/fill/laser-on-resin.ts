import type { LaserPlan } from '../../plan/laser-plan';
import type { Plan } from '../../plan/plan';
import { showArea, showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { contentsOf } from '../helpers/contents';
import { elapsed, longEnough } from '../helpers/elapsed';
import { faceAfter, faceBefore, negligible, sizeOfMet } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import type { Page } from '../page';
import { finding, type Rule, type Said } from '../rule';

const page: Page = {
    id: 'laser-on-resin',
    title: 'Laser on resin',
    severities: ['warning', 'error'],
    quickFix: 'always',
    condition:
        'A blank goes back under the laser after it has been filled: before the resin has cured, or so that the beam engraves or cuts over the fill.',
    error: 'The resin has not cured: it is a liquid that burns.',
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
            for (const content of contentsOf(plan, faceBefore(plan, step.index, blank))) {
                const fill = plan.steps[content.step]?.step;
                if (fill?.kind !== 'fill') continue;
                const cure = fill.resin?.cure;
                const cured =
                    cure === undefined || longEnough(elapsed(plan, fill.index, step.index), cure.value - cure.tolerance);
                const beamed = beamOver(plan, laser, fill.index);
                if (cured && beamed === undefined) continue;
                const how = cured
                    ? phrase`${step.kind === 'cut' ? phrase`cuts along` : phrase`runs over`} ${beamed?.size} of ${content.name}`
                    : phrase`works while ${content.name} has not cured`;
                const metal = beamed !== undefined && (fill.resin?.powder?.value ?? 0) > 0;
                const said = {
                    severity: cured ? 'warning' : 'error',
                    message: phrase`The laser ${how}: resin must not be burnt${metal ? phrase`, and the metal powder in it throws the beam back` : ''}.`,
                    where: step.where,
                    step: step.index,
                    spots: beamed?.spots ?? [],
                    related: [{ message: phrase`The resin is poured here.`, where: fill.where }],
                } as const;
                poured.push({
                    finding: said,
                    first: plan.steps.find((other) => other.fill?.pocket.index === content.pocket)?.step ?? fill,
                });
            }
            // Before all of them, whichever of them is looked at.
            const [first] = poured.map((one) => one.first).toSorted((a, b) => a.index - b.index);
            for (const one of poured)
                yield finding(page, {
                    ...one.finding,
                    fixes: [
                        {
                            title: phrase`Do ${step.name} before the fill`,
                            changes: [{ do: 'move', statement: step.whole, before: first!.whole }],
                        },
                    ],
                });
        }
    },
};

interface Beamed {
    readonly size: string;
    readonly spots: Said['spots'];
}

/** How much of a fill the beam goes over, by what it meets on the face as it is then; undefined where that is next to nothing. */
function beamOver(plan: Plan, laser: LaserPlan, fill: number): Beamed | undefined {
    const face = faceAfter(plan, laser.step.index, laser.blank);
    if (face === undefined) return undefined;
    const met = face.met.filter(({ layers }) => layers.some(isOf(fill)));
    const { area: over, length } = sizeOfMet(met);
    const spots = spotsOf(
        laser.blank,
        met.map(({ region }) => region),
    );
    if (laser.step.kind === 'cut') {
        return length <= leastLength ? undefined : { size: showLength(length), spots };
    }
    return over <= negligible ? undefined : { size: showArea(over), spots };
}

function isOf(fill: number) {
    return ({ kind, step }: { readonly kind: string; readonly step?: number }): boolean => kind === 'resin' && step === fill;
}

/** A cut that runs shorter over a fill only touches its edge, mm. */
const leastLength = 1;
