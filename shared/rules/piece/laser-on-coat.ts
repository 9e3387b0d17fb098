import { phrase } from '../../recipe/phrase';
import { elapsed, longEnough } from '../helpers/elapsed';
import { faceAfter, nameOf, sizeOfMet } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import { wetting } from '../helpers/wetting';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'laser-on-coat',
    title: 'Laser on finished wood',
    severities: ['info'],
    quickFix: 'sometimes',
    condition: 'The beam engraves or cuts through a finish that is dry.',
    why: 'A finish gives off more than wood does, yellows along the edge, and takes energy: depths are those of bare wood.',
    mend: 'Do the laser’s work first and finish afterwards. If it is meant so, look up in the finish’s data sheet whether it may be burnt.',
    source: commonPractice,
};

export const laserOnCoat: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, laser } of plan.steps) {
            if (laser === undefined || blank === undefined) continue;
            const met = faceAfter(plan, step.index, blank)?.met ?? [];
            const coats = new Set(
                met.flatMap(({ layers }) => layers.flatMap(({ kind, step: by }) => (kind === 'coat' ? (by ?? []) : []))),
            );
            for (const index of coats) {
                const finish = plan.steps[index]?.step;
                const wet = wetting(plan, index);
                // Still wet it is graver, as laser-on-wet says.
                if (finish?.kind !== 'finish' || (wet !== undefined && !longEnough(elapsed(plan, index, step.index), wet.needs)))
                    continue;
                const here = met.filter(({ layers }) => layers.some((layer) => layer.step === index));
                const { length, matters, shown } = sizeOfMet(here);
                if (!matters) continue;
                const between = plan.steps.slice(index + 1, step.index).filter((other) => other.blank === blank);
                yield finding(page, {
                    severity: 'info',
                    message: phrase`${nameOf(step)} burns ${shown} ${length > 0 ? 'through' : 'of'} ${finish.coat?.name ?? phrase`the finish`}: burn first and finish afterwards, or see in its data sheet whether it may be burnt.`,
                    where: step.where,
                    step: step.index,
                    spots: spotsOf(
                        blank,
                        here.map(({ region }) => region),
                    ),
                    related: [{ message: phrase`It is finished here.`, where: finish.where }],
                    fixes: between.every((other) => other.step.kind === 'wait')
                        ? [
                              {
                                  title: phrase`Do ${nameOf(step)} before the finish`,
                                  changes: [{ do: 'move', statement: step.whole, before: finish.whole }],
                              },
                          ]
                        : [],
                });
            }
        }
    },
};
