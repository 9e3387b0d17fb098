import { showRatio } from '../quantity/show';
import type { Page } from './page';
import { finding, type Rule } from './rule';

/** Most pigment by mass before resin may stay soft; powders of metal stand more (from memory, no source found). */
const most = 0.1;
const mostMetal = 0.5;

const page: Page = {
    id: 'pigment-overload',
    title: 'Too much pigment',
    condition: `A resin that is poured holds more than ${most * 100} % of pigment by mass; more than ${mostMetal * 100} % even for metal powder.`,
    why: 'Pigment takes no part in the cure. Too much of it leaves the resin soft or chalky, and thick enough to trap air.',
    mend: 'Take less, or try the mix on an offcut first. Paste is commonly used up to 6 %, mica up to 10 %, metal powder up to half.',
    source: 'From memory, no source found: makers’ sheets differ, and come first.',
};

export const pigmentOverload: Rule = {
    page,
    *examine(plan) {
        for (const { step } of plan.steps) {
            const pigment = step.kind === 'fill' ? step.resin?.pigment : undefined;
            if (step.kind !== 'fill' || pigment === undefined || pigment.value <= most) continue;
            const over = pigment.value > mostMetal;
            yield finding(page, {
                severity: over ? 'warning' : 'hint',
                message: `${step.resin!.name} holds ${showRatio(pigment.value)} of pigment; more than ${showRatio(over ? mostMetal : most)}${over ? '' : ' of anything but metal powder'} may keep it from curing.`,
                where: step.where,
                step: step.index,
                related: [{ message: 'The pigment is written here.', where: pigment.where }],
            });
        }
    },
};
