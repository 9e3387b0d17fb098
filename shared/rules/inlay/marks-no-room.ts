import { keptFor, nameOf } from '../../plan/kept';
import { Memo } from '../../plan/memo';
import type { InlayPlan, Plan } from '../../plan/plan';
import { findMarks } from '../../plan/plan-marks';
import { showLength } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Inlay } from '../../recipe/step';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** By how much a blank is tried larger, mm. */
const larger = [5, 10, 15, 20, 30, 40, 60];

const page: Page = {
    id: 'marks-no-room',
    title: 'No room for the marks',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: 'An inlay asks for more marks than fit beside the art, on both of its blanks as they lie upon each other.',
    why: 'The marks are what the halves are laid together by. They stand outside of the veneer half’s boundary and of all that is engraved, and at least 2 mm away from it and from the edges.',
    mend: 'Take a larger veneer blank, a smaller boundary (`inverse within grown 6 mm` follows the art), or fewer marks.',
    source: commonPractice,
};

export const marksNoRoom: Rule = {
    page,
    *examine(plan) {
        for (const { step, inlay } of plan.steps) {
            const marks = inlay?.marks;
            if (step.kind === 'inlay' && step.marks !== undefined && inlay?.relief.kind === 'cut') {
                const { where } = step.marks;
                yield finding(page, {
                    severity: 'warning',
                    message: phrase`${inlay.relief.name} is cut out, and nothing of its sheet stays beside it for marks: leave them out, the opening holds the part in its place.`,
                    where,
                    step: step.index,
                    fixes: [{ title: phrase`Leave the marks out`, preferred: true, changes: [{ do: 'remove', where }] }],
                });
                continue;
            }
            if (step.kind !== 'inlay' || inlay === undefined || marks === undefined || marks.placed >= marks.wanted) continue;
            const wanted =
                marks.wanted === 1
                    ? 'The mark has'
                    : `${countOf(marks.placed)} of the ${marks.wanted} marks ha${marks.placed === 1 ? 's' : 've'}`;
            const none = marks.wanted === 1 ? phrase`no room` : 'room';
            const turns =
                inlay.symmetry.turns > 1 && marks.placed === 0 ? phrase` Nothing tells then which way round the inlay goes.` : '';
            const fix = largerBlank(plan, inlay, step);
            const mend = fix === undefined ? phrase` A smaller boundary or a larger board would make some.` : '';
            yield finding(page, {
                severity: 'warning',
                message: phrase`${wanted} ${none} beside ${inlay.relief.name} and ${inlay.pocket.name}.${turns}${mend}`,
                where: step.marks?.where ?? step.where,
                step: step.index,
                fixes: [...(fix === undefined ? [] : [fix]), ...fewer(plan, inlay, step)],
            });
        }
    },
};

function countOf(placed: number): string {
    return placed === 0 ? 'None' : `Only ${placed}`;
}

/** As many marks as find room when no more are asked for, where they tell the turns of the art apart. */
function fewer(plan: Plan, inlay: InlayPlan, step: Inlay): Fix[] {
    const size = (name: string) => plan.blanks.find((blank) => blank.name === name)?.size;
    const [relief, pocket] = [size(inlay.reliefLaser.blank), size(inlay.pocketLaser.blank)];
    if (relief === undefined || pocket === undefined || step.marks === undefined) return [];
    const sheets = { relief: { x: 0, y: 0, ...relief }, pocket: { x: 0, y: 0, ...pocket } };
    for (let wanted = inlay.marks?.placed ?? 0; wanted > 0; wanted--) {
        const { marks } = findMarks({ inlay, index: step.index, wanted, sheets }, plan.steps, triedFor(inlay));
        if (marks.placed < wanted || (marks.apart ?? marks.diameter) < marks.diameter) continue;
        return [
            { title: phrase`Ask for ${wanted}`, changes: [{ do: 'replace', where: step.marks.where, text: `marks ${wanted}` }] },
        ];
    }
    return [];
}

/** What has been tried with the halves of an inlay as they lie on each other: figures that are typed or tried out move no mark. */
function triedFor({ turned }: InlayPlan): Memo {
    return keptFor(turned, 'marks tried', () => new Memo());
}

/** The least of the larger veneer blanks on which all marks have room; undefined where a larger one does not help. */
function largerBlank(plan: Plan, inlay: InlayPlan, step: Inlay): Fix | undefined {
    const relief = plan.blanks.find(({ name }) => name === inlay.reliefLaser.blank);
    const pocket = plan.blanks.find(({ name }) => name === inlay.pocketLaser.blank);
    const extent = relief?.blank.size;
    if (relief?.size === undefined || pocket?.size === undefined || extent === undefined) return undefined;
    // A boundary that is the whole blank grows with it.
    if (inlay.relief.placements.some((one) => one.kind === 'art' && one.inverse?.value.kind === 'blank')) return undefined;
    const { width, height } = relief.size;
    const held = inlay.relief.placements.some(
        (placement) => placement.at !== undefined || placement.places?.points !== undefined,
    );
    const sheet = { x: 0, y: 0, ...pocket.size };
    const wanted = inlay.marks?.wanted ?? 0;
    const key = `marks ${step.index} ${wanted} ${width} ${height} ${held} ${pocket.size.width} ${pocket.size.height} ${burntKey(plan)}`;
    const more = keptFor(inlay.turned, key, () =>
        larger.find((by) => {
            const from = held ? 0 : -by / 2;
            const sheets = { relief: { x: from, y: from, width: width + by, height: height + by }, pocket: sheet };
            return findMarks({ inlay, index: step.index, wanted, sheets }, plan.steps, triedFor(inlay)).marks.placed >= wanted;
        }),
    );
    if (more === undefined) return undefined;
    const size = `${showLength(width + more, extent.width.unit)} x ${showLength(height + more, extent.height.unit)}`;
    return {
        title: phrase`Make ${relief.name} ${size}`,
        preferred: true,
        changes: [{ do: 'replace', where: extent.where, text: size }],
    };
}

/** All that is burnt, as part of a key for what is remembered of where marks have room. */
export function burntKey(plan: Plan): string {
    return plan.steps.map(({ laser }) => (laser === undefined ? 0 : nameOf(laser.region))).join(' ');
}
