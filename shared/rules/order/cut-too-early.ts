import { intersect } from '../../geometry/boolean';
import { area } from '../../geometry/measure';
import { keptFor, nameOf } from '../../plan/kept';
import { showArea } from '../../quantity/show';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Part of a later cut that has to lie in what was cut out for the order to matter, and of an engraving, which may run across ring and disc. */
const mostOfCut = 0.5;
const someOfEngraving = 0.1;

const page: Page = {
    id: 'cut-too-early',
    title: 'Cut out before the rest is burnt',
    severities: ['warning'],
    quickFix: 'always',
    condition: 'A part is cut out of its blank, without tabs or backing, and the laser works on it, or across it, afterwards.',
    why: 'Once it is free it tilts, drops or shifts with the draught, and everything burnt later lands beside its place.',
    mend: 'Cut last, leave tabs, or back the blank with tape.',
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
                    shareInside(other.laser.region, laser.region) > (other.step.kind === 'cut' ? mostOfCut : someOfEngraving),
            );
            if (later === undefined || (later.step.kind !== 'engrave' && later.step.kind !== 'cut')) continue;
            const share = shareInside(later.laser!.region, laser.region);
            const across = share > mostOfCut ? undefined : showArea(share * later.laser!.area);
            yield finding(page, {
                severity: 'warning',
                message:
                    across === undefined
                        ? `${step.name} cuts the piece free, and ${later.step.name} is burnt on it afterwards: it will have shifted.`
                        : `${step.name} cuts a part free, and ${across} of ${later.step.name} are burnt on it afterwards: it will have shifted or dropped. Burn ${later.step.name} first, or give ${step.name} tabs.`,
                where: step.where,
                step: step.index,
                related: [{ message: `${later.step.name} is burnt here.`, where: later.step.where }],
                fixes: [
                    {
                        title: `Do ${later.step.name} first`,
                        preferred: true,
                        changes: [{ do: 'move', statement: later.step.whole, before: step.whole }],
                    },
                ],
            });
        }
    },
};

type Rings = Parameters<typeof area>[0];

function shareInside(part: Rings, whole: Rings): number {
    return keptFor(part, `inside ${nameOf(whole)}`, () => {
        const size = area(part);
        return size > 0 ? area(intersect(part, whole)) / size : 0;
    });
}
