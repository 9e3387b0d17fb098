import { showRatio } from '../quantity/show';
import type { Page } from './page';
import { finding, type Rule } from './rule';

/** Most pigment by mass before resin may stay soft; powders of metal stand more (from memory, no source found). */
const most = 0.1;
const mostMetal = 0.5;

const page: Page = {
    id: 'pigment-overload',
    title: 'Too much pigment',
    severities: ['hint', 'warning'],
    condition: `A resin that is poured holds more than ${most * 100} % of pigment by mass; more than ${mostMetal * 100} % even for metal powder.`,
    why: 'Pigment takes no part in the cure. Too much of it leaves the resin soft or chalky, and thick enough to trap air.',
    mend: 'Take less, or try the mix on an offcut first. Paste is commonly used up to 6 %, mica up to 10 %, metal powder up to half.',
    source: 'From memory, no source found: makers’ sheets differ, and come first.',
};

export const pigmentOverload: Rule = {
    page,
    *examine(plan) {
        for (const { step } of plan.steps) {
            if (step.kind !== 'fill' || step.resin === undefined) continue;
            const { name, pigment, powder } = step.resin;
            for (const { share, what, limit } of [
                { share: pigment, what: 'pigment', limit: most },
                { share: powder, what: 'metal powder', limit: mostMetal },
            ]) {
                if (share === undefined || share.value <= limit) continue;
                const over = share.value > mostMetal;
                const hint = what === 'pigment' && !over ? '; metal powder is written as `powder`' : '';
                yield finding(page, {
                    severity: over ? 'warning' : 'hint',
                    message: `${name} holds ${showRatio(share.value)} of ${what}; more than ${showRatio(limit)} may keep it from curing${hint}.`,
                    where: step.where,
                    step: step.index,
                    related: [{ message: `The ${what} is written here.`, where: share.where }],
                });
            }
        }
    },
};
