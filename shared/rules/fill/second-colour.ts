import { approach } from '../../geometry/distance';
import { lieAlike } from '../../plan/lies';
import type { Plan, StepPlan } from '../../plan/plan';
import { usualOverfill } from '../../plan/plan-fill';
import { showLength, showTime } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Resin } from '../../recipe/stock';
import { atItsWord } from '../figures';
import { elapsed, longEnough } from '../helpers/elapsed';
import { calledInShop } from '../helpers/laid-over';
import { noWall } from '../helpers/least-wall';
import { longerWait } from '../helpers/longer-wait';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** How far resin that stands above the face creeps over it, mm. @commonPractice */
const creeps = 2;

const page: Page = {
    id: 'second-colour',
    title: 'Second colour before the first has set',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition: `Two pockets less than ${creeps} mm apart are filled with different resins, overfilled, and the second is poured before the first carries a layer (\`recoat\`) or, where nothing is said of that, before it has cured.`,
    why: 'What stands above the face flows over it while it is wet. Two wet colours meet on the wall between them and run into each other.',
    mend: 'Let the first set before the second is poured, leave more wood between them, or fill both level (`overfill 0 %`).',
    source: `${commonPractice} The times are the stock’s figures.`,
};

export const secondColour: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const later of plan.steps) {
            if (!standsAbove(later)) continue;
            for (const before of plan.steps.slice(0, later.step.index)) {
                const first = resinOf(before);
                const second = resinOf(later);
                if (first === undefined || second === undefined || first.name === second.name || !standsAbove(before)) continue;
                if (before.blank !== later.blank || before.fill?.pocket === later.fill?.pocket) continue;
                const set = setsAfter(first);
                const gone = elapsed(plan, before.step.index, later.step.index);
                if (set === undefined || longEnough(gone, set)) continue;
                const apart = distance(plan, before, later);
                if (apart === undefined) continue;
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`${second.name} is poured ${showLength(apart)} beside ${calledInShop(first)} that has had ${showTime(gone)}: it has set after ${showTime(set)}, and until then the two run together.`,
                    where: later.step.where,
                    step: later.step.index,
                    rests: [(first.recoat ?? first.cure)?.where],
                    related: [{ message: phrase`${first.name} is poured here.`, where: before.step.where }],
                    fixes: longerWait(page.id, plan, before.step, later.step, set - gone, figures),
                });
                break;
            }
        }
    },
};

function resinOf({ step }: StepPlan): Resin | undefined {
    return step.kind === 'fill' ? step.resin : undefined;
}

function standsAbove({ step, fill }: StepPlan): boolean {
    if (step.kind !== 'fill' || fill === undefined) return false;
    return (step.overfill?.value ?? (fill.layer.number === fill.layer.of ? usualOverfill : 0)) > 0;
}

function setsAfter({ recoat, cure }: Resin): number | undefined {
    return recoat === undefined ? cure && cure.value - cure.tolerance : recoat.value - recoat.tolerance;
}

/** How much wood lies between two pockets, mm; undefined where it is more than resin creeps over. */
function distance({ steps }: Plan, one: StepPlan, other: StepPlan): number | undefined {
    const [a, b] = [one, other].map(({ fill }) => steps[fill?.pocket.index ?? -1]?.laser);
    // What stands on one face does not reach the other.
    const isApart = a === undefined || b === undefined || !lieAlike(a, b);
    const apart = isApart ? undefined : approach(a.region, b.region, creeps)?.distance;
    // Without a wall the one runs into the other's pocket, of which fill-runs-over speaks.
    return apart === undefined || apart < noWall ? undefined : apart;
}
