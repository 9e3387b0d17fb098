import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'dotted-depth',
    title: 'A picture in dots, asked for depth',
    severities: ['warning'],
    condition: 'A step that burns a picture as dots asks for a depth, or is filled or let in.',
    why: 'Dots make greys by how much bare wood stays between them. Dug deep they make a field of pins that break off: no floor for a fill, and no edge for an inlay.',
    mend: 'Ask for a `tone`; or leave `dither` out of the art, so that what is darker than the threshold is dug as one shape.',
    source: commonPractice,
};

/** A depth below this only colours. @commonPractice */
const colours = 0.1;

export const dottedDepth: Rule = {
    page,
    *examine(plan) {
        for (const { step, laser } of plan.steps) {
            const [picture] = laser?.pictures ?? [];
            if (step.kind !== 'engrave' || laser === undefined || picture === undefined) continue;
            const use = plan.recipe.steps.find(
                (other) =>
                    (other.kind === 'fill' && other.pocket.value === step.name) ||
                    (other.kind === 'inlay' && (other.pocket.value === step.name || other.relief.value === step.name)),
            );
            const depth = laser.tone === undefined ? (laser.depth?.value ?? 0) : 0;
            if (use === undefined && depth <= colours) continue;
            const what =
                use === undefined
                    ? phrase`${showLength(depth)} deep`
                    : use.kind === 'fill'
                      ? phrase`to be filled`
                      : phrase`for an inlay`;
            const { depth: written } = step;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${picture.artName} is burnt as dots, ${what}: that leaves pins of wood instead of a floor. Take \`dither\` out, or ask for a tone.`,
                where: written?.where ?? step.where,
                step: step.index,
                related: use === undefined ? [] : [{ message: phrase`It is used here.`, where: use.where }],
            });
        }
    },
};
