import { blend, contrast, hardlyShows } from '../bench/contrast';
import type { Plan, StepPlan } from '../plan/plan';
import { showNumber } from '../quantity/show';
import { blankOf } from './blank-names';
import type { Page } from './page';
import { finding, type Rule } from './rule';

const page: Page = {
    id: 'low-contrast',
    title: 'Hardly any contrast',
    condition: `A fill, an inlay or a mere colour differs from the wood around it by less than ${hardlyShows} (CIEDE2000).`,
    why: 'Grain and light break up an edge: what differs so little is not seen as a figure.',
    mend: 'Choose another wood or colour, or burn darker. If it is meant as a quiet mark, `allow low-contrast because "…"`.',
    source: 'CIEDE2000 (CIE 142:2001). The limit is our own judgement: one board of a wood differs by several from the next. So are the colours of the built-in woods.',
};

export const lowContrast: Rule = {
    page,
    *examine(plan) {
        for (const stepPlan of plan.steps) {
            const pair = pairOf(plan, stepPlan);
            if (pair === undefined) continue;
            const seen = contrast(pair.figure, pair.ground);
            if (seen === undefined || seen >= hardlyShows) continue;
            const { step } = stepPlan;
            yield finding(page, {
                severity: 'info',
                message: `${pair.what} differs from ${pair.wood} by ${showNumber(seen, 1)}; below ${hardlyShows} it hardly shows.`,
                where: step.kind === 'engrave' ? (step.tone?.where ?? step.where) : step.where,
                step: step.index,
            });
        }
    },
};

interface Pair {
    readonly what: string;
    readonly wood: string;
    readonly figure: string;
    readonly ground: string;
}

function pairOf(plan: Plan, stepPlan: StepPlan): Pair | undefined {
    const { step, inlay, laser } = stepPlan;
    const wood = blankOf(plan, stepPlan)?.blank.sheet?.wood;
    if (wood === undefined) return undefined;
    const ground = wood.colour;
    if (step.kind === 'fill' && step.resin !== undefined) {
        const figure = blend(wood.burnt, step.resin.colour, step.resin.opacity?.value ?? 1);
        return { what: step.resin.name, wood: wood.name, figure, ground };
    }
    if (inlay !== undefined) {
        const other = plan.blanks.find((blank) => blank.name === inlay.reliefLaser.blank)?.blank.sheet?.wood;
        return other === undefined ? undefined : { what: other.name, wood: wood.name, figure: other.colour, ground };
    }
    if (step.kind === 'engrave' && laser?.tone !== undefined) {
        return { what: step.name, wood: wood.name, figure: blend(ground, wood.burnt, laser.tone), ground };
    }
    return undefined;
}
