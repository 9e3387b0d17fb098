import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Finish } from '../../recipe/step';
import { blankOf } from '../helpers/blank-names';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Thinner than this a board follows its coats, mm; and wider across the grain than so many thicknesses it shows. @commonPractice */
const thin = 8;
const slender = 24;

const page: Page = {
    id: 'one-face-finished',
    title: 'Thin wood finished on one face',
    severities: ['info'],
    quickFix: 'always',
    condition: `A blank of solid wood thinner than ${thin} mm, and ${slender} times as wide across its grain as it is thick, gets a film on its face, and no \`do\` step speaks of the back, the edges or both faces.`,
    why: 'A film lets moisture in and out slowly. With one on one face alone the bare face takes it up and gives it off faster, and a thin piece cups with every change of the weather.',
    mend: 'Give the back as many coats, and write that down as a step; or oil both faces, which leaves no film.',
    source: commonPractice,
};

/** What soaks in and leaves no film to speak of. @commonPractice */
const noFilm = new Set(['drying-oil', 'mineral-oil', 'wax']);
const speaksOfBack = /\b(?:backs?|both|edges?|underside|all round|other (?:face|side))\b/i;

export const oneFaceFinished: Rule = {
    page,
    *examine(plan) {
        for (const blank of plan.blanks) {
            const { sheet, size, grain } = blank.blank;
            const made = sheet?.madeOf?.value ?? 'solid';
            if (sheet?.kind !== 'board' || made !== 'solid' || sheet.thickness === undefined || size === undefined) continue;
            const across = grain === undefined ? undefined : grain === 'width' ? size.height.value : size.width.value;
            const { value: thickness } = sheet.thickness;
            if (across === undefined || thickness >= thin || across < slender * thickness) continue;
            const coats = plan.steps.flatMap((stepPlan): Finish[] => {
                const { step } = stepPlan;
                return step.kind === 'finish' && blankOf(plan, stepPlan) === blank && isFilm(step) ? [step] : [];
            });
            const [first] = coats;
            if (first === undefined) continue;
            if (plan.recipe.steps.some((step) => step.kind === 'do' && speaksOfBack.test(step.text))) continue;
            const statement = `do "finish the back and the edges of ${blank.name} the same way" for 10 min`;
            yield finding(page, {
                severity: 'info',
                message: phrase`${blank.name} is ${showLength(thickness)} thick and ${showLength(across)} wide across its grain: with ${first.coat?.name} on one face alone it cups. Finish the back as well.`,
                where: first.where,
                step: first.index,
                fixes: [
                    {
                        title: phrase`Add a step for the back`,
                        preferred: true,
                        changes: [{ do: 'add', block: plan.recipe.whole, statement }],
                    },
                ],
            });
        }
    },
};

function isFilm({ coat }: Finish): boolean {
    return coat !== undefined && !coat.kinds.some((kind) => noFilm.has(kind));
}
