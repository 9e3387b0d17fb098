import { showTime } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { atItsWord } from '../figures';
import { elapsed, longEnough } from '../helpers/elapsed';
import { faceAfter, sizeOfMet } from '../helpers/face-at';
import { longerWait } from '../helpers/longer-wait';
import { spotsOf } from '../helpers/spots';
import { wetting } from '../helpers/wetting';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'laser-on-wet',
    title: 'Laser on a wet coat or glue',
    severities: ['error', 'hint'],
    quickFix: 'sometimes',
    condition: 'The beam goes through a sealer, a finish or glue that has not had its time to dry.',
    error: 'Always: it may catch fire.',
    why: 'What evaporates from a wet coat can catch fire under the beam.',
    mend: 'Burn first, or wait until it is dry; its data sheet and the machine’s manual come first.',
    source: 'Common practice, no source. The drying time is the stock’s figure.',
};

export const laserOnWet: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, blank } of plan.steps) {
            if (step.kind !== 'engrave' && step.kind !== 'cut') continue;
            const met = faceAfter(plan, step.index, blank)?.met ?? [];
            const laid = new Set(
                met.flatMap(({ layers }) =>
                    layers.flatMap((layer) => (layer.kind === 'coat' || layer.kind === 'glue' ? (layer.step ?? []) : [])),
                ),
            );
            for (const index of laid) {
                const wet = wetting(plan, index);
                if (wet === undefined) continue;
                const gone = elapsed(plan, index, step.index);
                if (longEnough(gone, wet.needs)) continue;
                const here = met.filter(({ layers }) => layers.some((layer) => layer.step === index));
                const { length, matters, shown } = sizeOfMet(here);
                if (!matters) continue;
                yield finding(page, {
                    severity: 'error',
                    message: phrase`${step.name} burns ${shown} ${length > 0 ? 'through' : 'of'} ${wet.name} that is still wet: it needs ${showTime(wet.needs)} and has had ${showTime(gone)}.`,
                    where: step.where,
                    step: step.index,
                    rests: [wet.where],
                    spots: spotsOf(
                        blank ?? '',
                        here.map(({ region }) => region),
                    ),
                    related: [{ message: phrase`${wet.name} goes on here.`, where: wet.step.where }],
                    fixes: longerWait(page.id, plan, wet.step, step, wet.needs - gone, figures),
                });
            }
        }
    },
};
