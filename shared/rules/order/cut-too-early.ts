import { intersect } from '../../geometry/boolean';
import { area } from '../../geometry/measure';
import { keptFor, nameOf as keyOf } from '../../plan/kept';
import type { LaserPlan } from '../../plan/laser-plan';
import { lieAlike, seenAs } from '../../plan/lies';
import type { Plan, StepPlan } from '../../plan/plan';
import { showArea } from '../../quantity/show';
import type { Finding, Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import { nameOf } from '../helpers/face-at';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Part of a later cut that has to lie in what was cut out for the order to matter, and of an engraving, which may run across ring and disc. */
const mostOfCut = 0.5;
const someOfEngraving = 0.1;

const page: Page = {
    id: 'cut-too-early',
    title: 'Cut out before the rest is burnt',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition:
        'A part is cut out of its blank, without tabs or backing, and the laser works on it or across it afterwards, or engraves the rest of the sheet, which no later cut encloses.',
    why: 'Once it is free it tilts, drops or shifts with the draught, and everything burnt later lands beside its place. What is burnt on the rest of the sheet is not on the part.',
    mend: 'Cut last, leave tabs, or back the blank with tape. What belongs on the part lies within its outline.',
    source: commonPractice,
};

export const cutTooEarly: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, laser } of plan.steps) {
            if (step.kind !== 'cut' || laser === undefined || (step.tabs?.value ?? 0) > 0) continue;
            if (plan.blanks.find((candidate) => candidate.name === blank)?.blank.backing !== 'none') continue;
            const later = plan.steps.find(
                (other) =>
                    other.laser !== undefined &&
                    other.blank === blank &&
                    other.step.index > step.index &&
                    shareInside(seenAs(other.laser, laser, plan).region, laser.region) >
                        (other.step.kind === 'cut' ? mostOfCut : someOfEngraving),
            );
            yield* onTheRest(plan, step, laser);
            if (later === undefined || (later.step.kind !== 'engrave' && later.step.kind !== 'cut')) continue;
            const share = shareInside(seenAs(later.laser!, laser, plan).region, laser.region);
            const across = share > mostOfCut ? undefined : showArea(share * later.laser!.area);
            yield finding(page, {
                severity: 'warning',
                message:
                    across === undefined
                        ? phrase`${step.name} cuts the piece free, and ${later.step.name} is burnt on it afterwards: it will have shifted.`
                        : phrase`${step.name} cuts a part free, and ${across} of ${later.step.name} are burnt on it afterwards: it will have shifted or dropped. Burn ${later.step.name} first, or give ${step.name} tabs.`,
                where: step.where,
                step: step.index,
                related: [{ message: phrase`${later.step.name} is burnt here.`, where: later.step.where }],
                fixes: firstFix(later, laser, step),
            });
        }
    },
};

/** Only what is burnt into the same face can be burnt first by moving it. */
function firstFix({ step: later, laser }: StepPlan, cut: LaserPlan, { whole }: Step): Fix[] {
    if (laser === undefined || !lieAlike(laser, cut)) return [];
    const title = phrase`Do ${nameOf(later)} first`;
    return [{ title, preferred: true, changes: [{ do: 'move', statement: later.whole, before: whole }] }];
}

/** What is engraved on the sheet when the part is out of it. */
function* onTheRest(plan: Plan, cut: Cut, from: LaserPlan): Iterable<Finding> {
    const { blank, region } = from;
    const here = plan.steps.flatMap(({ laser }) => (laser?.blank === blank ? [seenAs(laser, from, plan)] : []));
    const cuts = here.filter(({ step }) => step.kind === 'cut');
    const engraved = here.filter(({ step, through }) => step.kind === 'engrave' && !through);
    const part = engraved.find(({ step, region: work }) => step.index < cut.index && shareInside(work, region) > mostOfCut);
    if (part === undefined) return;
    for (const { step, region: work } of engraved) {
        if (step.index < cut.index || cuts.some((other) => shareInside(work, other.region) > 0)) continue;
        yield finding(page, {
            severity: 'warning',
            message: phrase`${cut.name} has cut the part with ${nameOf(part.step)} out of ${blank} by then, and ${nameOf(step)} lies beside it, on what is left of the sheet. Move it inside ${cut.name}, or burn it first if the rest is to be kept.`,
            where: step.where,
            step: step.index,
            related: [{ message: phrase`${cut.name} is cut here.`, where: cut.where }],
            fixes: [
                {
                    title: phrase`Do ${nameOf(step)} before ${cut.name}`,
                    changes: [{ do: 'move', statement: step.whole, before: cut.whole }],
                },
            ],
        });
    }
}

type Cut = Extract<Step, { kind: 'cut' }>;
type Rings = Parameters<typeof area>[0];

function shareInside(part: Rings, whole: Rings): number {
    return keptFor(part, `inside ${keyOf(whole)}`, () => {
        const size = area(part);
        return size > 0 ? area(intersect(part, whole)) / size : 0;
    });
}
