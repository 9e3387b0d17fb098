import type { Plan, StepPlan } from '../../plan/plan';
import { laidBy } from '../../recipe/laid-by';
import { phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import type { Wood } from '../../recipe/stock';
import { woodOf } from '../helpers/blank-names';
import { faceBefore } from '../helpers/face-at';
import { isPrepared, preparing, saidOfLaying } from '../helpers/laid-over';
import { statementBefore } from '../helpers/statement-before';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'wood-not-wiped',
    title: 'Oily wood not wiped',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition:
        'Glue, resin or a coat goes on a wood on which the stock says that it holds only once that is wiped, or never (`over oily-wood once wiped`), and no `do` step before it speaks of a solvent: acetone, spirit, alcohol, naphtha, thinner, or degreasing.',
    why: 'Oils and resins of teak, padauk and their like come to the surface. Glue that has to soak in lies on them and lets go, and oils, varnishes and some resins stay soft: what those woods hold keeps them from taking in oxygen. A dry cloth takes off soot and dust alone.',
    mend: 'Wipe both faces with acetone or spirit right before, and glue as soon as they are dry; or take a glue that bridges, such as epoxy. Shellac dries on anything: two thin, dewaxed coats of it between wood and finish are the surest.',
    source: 'Seen in two glue makers’ guides, which wipe with acetone; disputed by others, who only sand, and by one maker of epoxy, which advises against solvent. Of finishes, seen in four guides: all wipe with a fast solvent, two want shellac as well, one puts tung oil straight on. The product’s own sheet comes first.',
};

export const woodNotWiped: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const { step } = stepPlan;
            const top = laidBy(step);
            if (top === undefined) continue;
            for (const { wood, since, what } of woodsUnder(plan, stepPlan)) {
                const said = saidOfLaying(top, wood);
                if (said === undefined || said.once === 'sanded' || said.after !== undefined) continue;
                if (said.once !== undefined && isPrepared(plan, said.once, step, since)) continue;
                const coats = step.kind === 'seal' || step.kind === 'finish';
                const statement = preparing('wiped', what, coats ? 'coat it' : 'glue');
                const never = said.once === undefined;
                yield finding(page, {
                    severity: 'warning',
                    message: never
                        ? phrase`${top.name} does not hold on ${wood.name}: seal ${what} with dewaxed shellac first, or take another.`
                        : phrase`${wood.name} is oily, and ${top.name} holds on ${what} only once it is wiped with a solvent: no step before does that.`,
                    where: step.where,
                    step: step.index,
                    rests: [said.where],
                    fixes: never
                        ? []
                        : [
                              {
                                  title: phrase`Add a step that wipes ${what}`,
                                  preferred: true,
                                  changes: [statementBefore(step, statement)],
                              },
                          ],
                });
            }
        }
    },
};

interface Ground {
    readonly wood: Wood;
    /** The step after which a wiping counts. */
    readonly since: number;
    readonly what: string;
}

/** The bare woods that a step lays something on. */
function woodsUnder(plan: Plan, { step, blank, face, inlay, fill }: StepPlan): Ground[] {
    const ground = (name: string | undefined, since: number): Ground[] => {
        const wood = woodOf(plan, name);
        return wood === undefined || name === undefined ? [] : [{ wood, since, what: name }];
    };
    if (inlay !== undefined) {
        return [
            ...ground(isSealedIn(plan, step, blank, inlay.pocket.index) ? undefined : blank, inlay.pocket.index),
            ...ground(inlay.reliefLaser.blank, inlay.relief.index),
        ];
    }
    if (fill !== undefined) return isSealedIn(plan, step, blank, fill.pocket.index) ? [] : ground(blank, fill.pocket.index);
    if (step.kind !== 'seal' && step.kind !== 'finish') return [];
    const bare = faceBefore(plan, step.index, blank)?.bare.layers[0];
    const laid = plan.steps.findLast(
        (other) => other.face === face && other.step.index < step.index && other.step.kind === 'sand',
    );
    return bare?.kind === 'wood' ? ground(blank, laid?.step.index ?? -1) : [];
}

/** Whether a sealer or something poured lies on what a step has burnt. */
function isSealedIn(plan: Plan, step: Step, blank: string | undefined, pocket: number): boolean {
    const cells = faceBefore(plan, step.index, blank)?.cells.filter(({ column }) =>
        column.digs.some((dig) => dig.step === pocket),
    );
    return cells?.some(({ column }) => column.layers[0]?.kind !== 'wood') ?? false;
}
