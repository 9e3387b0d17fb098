import type { Plan } from '../../plan/plan';
import { exactly } from '../../quantity/interval';
import { phrase } from '../../recipe/phrase';
import type { Engrave } from '../../recipe/step';
import { atItsWord } from '../figures';
import { askDepth } from '../helpers/ask-depth';
import { depthForFill } from '../helpers/fill-depth';
import { depthForVeneer } from '../helpers/veneer-depth';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'pocket-without-floor',
    title: 'A pocket without a floor',
    severities: ['error'],
    quickFix: 'sometimes',
    condition: 'An engraving that goes through the board is filled, or takes an inlay, and nothing is behind the board.',
    error: 'Always: nothing is there that could hold the fill or the inlay.',
    why: 'Resin runs out at the back, and an inlay drops through: there is no floor to glue it to.',
    mend: 'Give the pocket a depth that leaves a floor, or back the blank with tape.',
    source: commonPractice,
};

export const pocketWithoutFloor: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { fill, inlay, step } of plan.steps) {
            const pocket = fill?.pocket ?? inlay?.pocket;
            if (pocket?.kind !== 'engrave' || pocket.depth === undefined || !('through' in pocket.depth)) continue;
            if (isBacked(plan, pocket)) continue;
            const deep = fill === undefined ? depthForVeneer(inlay!) : depthOfFill(plan, pocket);
            const { text, fixes, instead } = askDepth(page.id, pocket, deep, plan, figures);
            const depth = `${text === undefined ? '' : phrase`; ${text} deep it would have one`}.${instead}`;
            yield finding(page, {
                severity: 'error',
                message: phrase`${pocket.name} goes through the board, so there is no floor ${fill === undefined ? phrase`to glue the inlay to` : phrase`and the fill runs out at the back`}${depth}`,
                where: pocket.depth.where,
                step: pocket.index,
                fixes,
                related: [
                    {
                        message: fill === undefined ? phrase`The inlay goes in here.` : phrase`It is filled here.`,
                        where: step.where,
                    },
                ],
            });
        }
    },
};

/** Whether something behind the blank holds what is filled or laid in. */
function isBacked({ blanks }: Plan, { blank }: Engrave): boolean {
    const own = blanks.find(({ name }) => name === blank.value)?.blank;
    return own !== undefined && own.backing !== 'none';
}

/** Whether a step is a pocket that is to be filled or inlaid and has nothing behind it: that it goes through is the fault. */
export function lacksFloor(plan: Plan, step: Engrave): boolean {
    const isTaken = plan.steps.some(({ fill, inlay }) => (fill?.pocket ?? inlay?.pocket)?.index === step.index);
    return isTaken && !isBacked(plan, step);
}

function depthOfFill(plan: Plan, pocket: Engrave): number | undefined {
    const laser = plan.steps[pocket.index]?.laser;
    return laser && depthForFill(plan, pocket, { ...laser, depth: exactly(0) });
}
