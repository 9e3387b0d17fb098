import { phrase } from '../../recipe/phrase';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'outline-of-bitmap',
    title: 'Outline of a bitmap',
    severities: ['error'],
    quickFix: 'sometimes',
    condition: 'A step asks for outline passes, or cuts, along art that is a bitmap.',
    error: 'Always: there is no line to follow.',
    why: 'A bitmap is made of dots; it has no outline to follow.',
    mend: 'Leave the outline out, or draw the art as an SVG.',
    source: commonPractice,
};

export const outlineOfBitmap: Rule = {
    page,
    *examine(plan) {
        for (const { laser, step } of plan.steps) {
            if (laser === undefined || (step.kind !== 'engrave' && step.kind !== 'cut')) continue;
            const passes = step.kind === 'engrave' ? step.outline : undefined;
            if (step.kind === 'engrave' && (passes === undefined || passes.value < 1)) continue;
            const bitmap = laser.placed.find((placed) => placed.bitmap);
            const placement = bitmap === undefined ? undefined : step.placements[bitmap.index];
            if (bitmap === undefined || placement === undefined) continue;
            yield finding(page, {
                severity: 'error',
                message: phrase`${bitmap.artName ?? phrase`The art`} is a bitmap: there is no outline to ${step.kind === 'cut' ? phrase`cut along` : 'follow'}.`,
                where: passes?.where ?? placement.where,
                step: step.index,
                related: passes === undefined ? [] : [{ message: phrase`The bitmap is used here.`, where: placement.where }],
                fixes:
                    passes === undefined
                        ? []
                        : [
                              {
                                  title: phrase`Leave the outline out`,
                                  preferred: true,
                                  changes: [{ do: 'remove', where: passes.where }],
                              },
                          ],
            });
        }
    },
};
