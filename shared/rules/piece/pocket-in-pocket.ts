import { isOpenPocket } from '../../piece/column';
import { showArea, showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { contentOf, faceAfter, nameOf, negligible, sizeOfMet } from '../helpers/face-at';
import { spotsOf } from '../helpers/spots';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

/** What a depth may be out without a word, as a part of it. */
const slack = 0.15;

const page: Page = {
    id: 'pocket-in-pocket',
    title: 'Pocket in a pocket',
    severities: ['warning'],
    condition: 'A pocket for a veneer, or one to be checked, is burnt where another step has left an open one.',
    why: 'The beam begins on the floor of the first: what is laid in the second lies too low.',
    mend: 'Move them apart, or fill and sand the first before the second is burnt.',
    source: 'Plain arithmetic.',
};

export const pocketInPocket: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, laser } of plan.steps) {
            if (step.kind !== 'engrave' || laser?.depth === undefined || laser.through || laser.tone !== undefined) continue;
            const checked = plan.recipe.steps.some(
                (other) => other.kind === 'check' && other.step.value === step.name && other.depth !== undefined,
            );
            if (contentOf(plan, step.index)?.inlay === undefined && !checked) continue;
            const face = faceAfter(plan, step.index, blank);
            const wish = laser.depth;
            const deeper = (face?.met ?? []).flatMap((met) => {
                const { column } = met;
                if (!isOpenPocket(column) || met.area <= negligible) return [];
                const before = column.top.value - (face?.level.value ?? 0);
                // What a veneer or a fill leaves open around itself is its clearance.
                if (column.digs.every((dig) => (contentOf(plan, dig.step)?.step.index ?? step.index) < step.index)) return [];
                return before > slack * wish.value ? [{ ...met, before }] : [];
            });
            const [deepest] = deeper.toSorted((a, b) => b.before - a.before);
            if (deepest === undefined || blank === undefined) continue;
            const first = plan.steps[deepest.column.digs.findLast(({ depth }) => depth.value > 0)?.step ?? -1]?.step;
            const size = sizeOfMet(deeper).area;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${step.name} is to be ${showLength(wish.value)} deep, but ${showArea(size)} of it lie where ${nameOf(first)} has dug ${showLength(deepest.before)} already: there it comes to ${showLength(deepest.before + wish.value)}. Move them apart, or fill and sand ${nameOf(first)} before ${step.name} is burnt.`,
                where: step.where,
                step: step.index,
                spots: spotsOf(
                    blank,
                    deeper.map(({ region }) => region),
                ),
                related: first === undefined ? [] : [{ message: phrase`${nameOf(first)} is dug here.`, where: first.where }],
            });
        }
    },
};
