import { tooTangled } from '../../plan/plan-laser';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'tangled-art',
    title: 'Art too tangled to be worked out',
    severities: ['error'],
    condition: 'The shapes that a step lays on one another cross so often that working out what burns would take minutes.',
    why: 'Fine hatching over fine hatching has millions of crossings. Nothing of the step is planned, rather than a part of it in silence.',
    mend: 'Unite or simplify the shapes in the drawing program, or engrave such shading as a picture with `dither`.',
    source: commonPractice,
};

export const tangledArt: Rule = {
    page,
    *examine(plan) {
        for (const { step, unplanned } of plan.steps) {
            if (unplanned !== tooTangled || (step.kind !== 'engrave' && step.kind !== 'cut')) continue;
            const message = `${step.name} cannot be planned: ${tooTangled}.`;
            yield finding(page, { severity: 'error', message, where: step.placements[0]?.where ?? step.where, step: step.index });
        }
    },
};
