import { tooTangled } from '../../plan/plan-laser';
import { phrase } from '../../recipe/phrase';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const wayOut = () =>
    phrase`Unite or simplify the shapes in the drawing program, or engrave such shading as a picture with \`dither\`.`;

const page: Page = {
    id: 'tangled-art',
    title: 'Art too tangled to be worked out',
    severities: ['error', 'info'],
    condition:
        'The shapes that a step lays on one another cross so often that working out what burns would take minutes; or translucent ones do, and what looks dark is then worked out at points of a grid, which an info says.',
    error: 'Nothing of the step could be worked out. Where it was worked out on a grid, it is an info.',
    why: 'Fine hatching over fine hatching has millions of crossings. Nothing of the step is planned, rather than a part of it in silence. On a grid an edge may lie off by as much as its points are apart.',
    mend: wayOut(),
    source: commonPractice,
};

export const tangledArt: Rule = {
    page,
    *examine(plan) {
        for (const { step, unplanned, laser } of plan.steps) {
            for (const { index, artName, grid } of laser?.placed ?? []) {
                if (grid === undefined || (step.kind !== 'engrave' && step.kind !== 'cut')) continue;
                const message = phrase`${artName} has more translucent shapes on one another than are worked out exactly: they are looked at in points ${grid.toFixed(2)} mm apart, and edges may be off by that. Join them in the drawing where that matters.`;
                yield finding(page, {
                    severity: 'info',
                    message,
                    where: step.placements[index]?.where ?? step.where,
                    step: step.index,
                });
            }
            if (unplanned !== tooTangled || (step.kind !== 'engrave' && step.kind !== 'cut')) continue;
            const message = phrase`${step.name} cannot be planned: ${tooTangled}. ${wayOut()}`;
            yield finding(page, { severity: 'error', message, where: step.placements[0]?.where ?? step.where, step: step.index });
        }
    },
};
