import { cupping, faceCoefficient } from '../../bench/wood-movement';
import { sideOf } from '../../piece/lie';
import { lieBefore } from '../../plan/lies';
import type { BlankPlan } from '../../plan/plan';
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
    condition: `A blank of solid wood thinner than ${thin} mm, and ${slender} times as wide across its grain as it is thick, gets a film on one face and is not flipped for the other, and no \`do\` step speaks of the back, the edges or both faces.`,
    why: 'A film lets moisture in and out slowly. With one on one face alone the bare face takes it up and gives it off faster, and a thin piece cups with every change of the weather.',
    mend: '`flip` the blank and give the back as many coats, or write that down as a step; or oil both faces, which leaves no film.',
    source: `${commonPractice} The bow is computed: moisture that changes evenly from face to back bends a strip by C·ΔM·width² / (8·thickness), with C of the Wood Handbook (FPL-GTR-190, Tab. 13-5).`,
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
            const faces = new Set(coats.map(({ index }) => sideOf(lieBefore(plan.recipe.steps, index, blank.name))));
            if (first === undefined || faces.size > 1) continue;
            if (plan.recipe.steps.some((step) => step.kind === 'do' && speaksOfBack.test(step.text))) continue;
            const statement = `do "finish the back and the edges of ${blank.name} the same way" for 10 min`;
            yield finding(page, {
                severity: 'info',
                message: phrase`${blank.name} is ${showLength(thickness)} thick and ${showLength(across)} wide across its grain: with ${first.coat?.name} on one face alone it cups${bowOf(blank, across, thickness)}. Finish the back as well.`,
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

/** How far it bows for each per cent that the bare back is damper. */
function bowOf({ blank: { sheet } }: BlankPlan, across: number, thickness: number): string {
    const coefficient = faceCoefficient(sheet?.wood, Math.PI / 2, sheet?.sawn?.value);
    if (coefficient === undefined) return '';
    return phrase`, by about ${showLength(cupping(across, thickness, coefficient, 0.01))} for each 1 % of moisture that its back has more`;
}

function isFilm({ coat }: Finish): boolean {
    return coat !== undefined && !coat.kinds.some((kind) => noFilm.has(kind));
}
