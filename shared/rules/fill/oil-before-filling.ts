import { area } from '../../geometry/measure';
import type { Plan, StepPlan } from '../../plan/plan';
import { showTime } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Finish, Step } from '../../recipe/step';
import { faceBefore, nameOf, negligible, openCellsOf } from '../helpers/face-at';
import { preparing, type Refusal, refusalOf } from '../helpers/laid-over';
import { statementBefore } from '../helpers/statement-before';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'oil-before-filling',
    title: 'Oil or wax before resin or glue',
    severities: ['warning', 'hint'],
    quickFix: 'always',
    condition:
        'A finish goes over an open pocket that is filled or inlaid only afterwards, with what never holds on it by the stock (`over drying-oil never`), only once it is sanded (`over lacquer once sanded`), or only after a time that it has not had (`over drying-oil after 7 d`).',
    why: 'Resin and glue hold on clean wood. On oil or wax they come loose, at once or after the first dry winter.',
    mend: 'Fill or inlay first, sand, and put the finish on last.',
    source: commonPractice,
};

export const oilBeforeFilling: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { step, fill, inlay } = stepPlan;
            const pocket = fill?.pocket ?? inlay?.pocket;
            const face = faceBefore(plan, step.index, fill === undefined ? inlay?.pocketLaser.blank : stepPlan.blank);
            if (pocket === undefined || face === undefined) continue;
            const coated = new Map<Finish, number>();
            for (const { column, region } of openCellsOf(face, pocket.index)) {
                const finish = finishOn(plan, column.layers[0]?.step, step);
                if (finish !== undefined) coated.set(finish, (coated.get(finish) ?? 0) + area(region));
            }
            for (const [finish, size] of coated) {
                if (size <= negligible) continue;
                const refusal = refusalOf(plan, step, finish);
                const once = refusal?.once;
                const what = step.kind === 'fill' ? (step.resin?.name ?? phrase`the resin`) : phrase`the glue`;
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`${finish.coat?.name} goes into ${nameOf(pocket)} before it is ${step.kind === 'fill' ? 'filled' : 'inlaid'}: ${what} ${holding(refusal)}. Put the finish on last.`,
                    where: step.where,
                    step: step.index,
                    rests: [refusal?.where],
                    related: [{ message: phrase`The finish goes on here.`, where: finish.where }],
                    fixes: [
                        ...(once === undefined ? [] : [prepared(preparing(once, `the ${finish.coat?.name}`), step)]),
                        {
                            title: phrase`Put ${finish.coat?.name} on last`,
                            changes: [{ do: 'move', statement: finish.whole, after: lastOn(plan, stepPlan, step).whole }],
                        },
                    ],
                });
            }
        }
    },
};

/** The finish of a step, where what is poured or glued in does not hold on it. */
function finishOn(plan: Plan, index: number | undefined, into: Step): Finish | undefined {
    const step = index === undefined ? undefined : plan.steps[index]?.step;
    return step?.kind === 'finish' && refusalOf(plan, into, step) !== undefined ? step : undefined;
}

/** When what goes in holds on the finish, if ever. */
function holding(refusal: Refusal | undefined): string {
    const first = refusal?.once === undefined ? [] : [refusal.once === 'sanded' ? 'is sanded dull' : 'is wiped clean'];
    const time = refusal?.after === undefined ? [] : [`has had ${showTime(refusal.after.value)}`];
    const needed = [...first, ...time];
    return needed.length === 0 ? phrase`does not hold on it` : phrase`holds on it only once that ${needed.join(' and ')}`;
}

function prepared(statement: string, step: Step): Fix {
    return { title: phrase`Add \`${statement}\``, changes: [statementBefore(step, statement)] };
}

/** The last step of the piece, behind which nothing is laid or taken off. */
function lastOn({ steps }: Plan, { blank }: StepPlan, from: Step): Step {
    const later = steps.filter((other) => other.step.index > from.index && (other.blank === blank || other.step.kind === 'wait'));
    return later.at(-1)?.step ?? from;
}
