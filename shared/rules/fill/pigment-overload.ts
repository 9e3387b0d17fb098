import { showRatio } from '../../quantity/show';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

/** Most pigment, as a share of the whole by mass, before resin may stay soft (from memory, no source found). */
const most = 0.1;
/** From here on it hardly can cure (own judgement). */
const farTooMuch = 0.5;
/** Metal powder is heavy: two or three parts to one of mixed resin are usual for casting (from memory, no source found). */
const mostMetal = 0.75;

const page: Page = {
    id: 'pigment-overload',
    title: 'Too much pigment',
    severities: ['hint', 'warning'],
    condition: `A resin that is poured holds more than ${most * 100} % of pigment, of the whole by mass; or more than ${mostMetal * 100} % of metal powder: three parts to one of mixed resin.`,
    why: 'Pigment takes no part in the cure. Too much of it leaves the resin soft or chalky, and thick enough to trap air.',
    mend: 'Take less, or try the mix on an offcut first. Paste is commonly used up to 6 %, mica up to 10 %; metal powder from 40 to 75 %.',
    source: 'From memory, no source found: makers’ sheets differ, and come first.',
};

export const pigmentOverload: Rule = {
    page,
    *examine(plan) {
        for (const { step } of plan.steps) {
            if (step.kind !== 'fill' || step.resin === undefined) continue;
            const { name, pigment, powder } = step.resin;
            for (const { share, what, limit, grave } of [
                { share: pigment, what: 'pigment', limit: most, grave: farTooMuch },
                { share: powder, what: 'metal powder', limit: mostMetal, grave: mostMetal },
            ]) {
                if (share === undefined || share.value <= limit) continue;
                const over = share.value > grave;
                const hint = what === 'pigment' && !over ? '; metal powder is written as `powder`' : '';
                yield finding(page, {
                    severity: over ? 'warning' : 'hint',
                    message: `${name} is ${showRatio(share.value)} ${what}, of the whole by mass; more than ${showRatio(limit)} may keep it from curing${hint}.`,
                    where: step.where,
                    step: step.index,
                    related: [{ message: `The ${what} is written here.`, where: share.where }],
                });
            }
        }
    },
};
