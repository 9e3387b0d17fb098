import { showArea, showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Sand } from '../../recipe/step';
import { faceAfter, faceBefore, isProudVeneer, levelEnough, nameOf, negligible, sizeOfMet } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import { statementBefore } from '../helpers/statement-before';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'burn-before-flush',
    title: 'Pocket in a veneer that stands proud',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: `A pocket is dug across a laid veneer that stands more than ${levelEnough} mm above the face.`,
    why: 'The beam begins on top of the veneer: the floor lies that much higher there than beside it, and what is laid in it rocks and stands proud.',
    mend: 'Sand the first inlay flush before the next pocket is burnt.',
    source: commonPractice,
};

export const burnBeforeFlush: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, laser } of plan.steps) {
            if (step.kind !== 'engrave' || blank === undefined || laser?.depth === undefined || laser.tone !== undefined)
                continue;
            const face = faceBefore(plan, step.index, blank);
            if (laser.through || face === undefined) continue;
            const met = faceAfter(plan, step.index, blank)?.met ?? [];
            const proud = met.filter(({ column }) => isProudVeneer(face, column));
            const { area } = sizeOfMet(proud);
            const laid = plan.steps[proud[0]?.column.layers[0]?.step ?? -1];
            if (area <= negligible || proud[0] === undefined || laid?.inlay === undefined) continue;
            const sanding = plan.steps
                .map((other) => other.step)
                .find((other): other is Sand => other.kind === 'sand' && other.blank.value === blank && other.index > step.index);
            yield finding(page, {
                severity: 'warning',
                message: phrase`${nameOf(laid.inlay.relief)} stands ${showLength(face.level.value - proud[0].column.top.value)} proud where ${step.name} is burnt (${showArea(area)}): sand ${blank} flush first.`,
                where: step.where,
                step: step.index,
                spots: spotsOf(
                    blank,
                    proud.map(({ region }) => region),
                ),
                related: [
                    { message: phrase`${nameOf(laid.inlay.relief)} is glued in here.`, where: laid.step.where },
                    ...(sanding === undefined ? [] : [{ message: phrase`It is sanded only here.`, where: sanding.where }]),
                ],
                fixes:
                    plan.recipe.base === undefined
                        ? [
                              {
                                  title: phrase`Sand ${blank} flush first`,
                                  changes: [statementBefore(step, `sand ${blank} { flush  grits 120, 180 }`)],
                              },
                          ]
                        : [],
            });
        }
    },
};
