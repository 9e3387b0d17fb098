import type { GoesOn } from '../../plan/laser-plan';
import { showLength, showLengthInterval } from '../../quantity/show';
import { type Message, phrase } from '../../recipe/phrase';
import type { Engrave, Reached } from '../../recipe/step';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'goes-on',
    title: 'A burn that goes on from a measured depth',
    severities: ['info', 'warning'],
    quickFix: 'always',
    condition:
        'A depth says how deep the piece on the bench is after its first passes (`reached 0.31 mm after 2`). A warning where nothing is left to burn, or where no piece can be so unlike its coupon as that says.',
    why: 'Plan, checklist and files are then for what is left of this one piece. On the next one they would burn a pocket that is too shallow.',
    mend: 'Burn the rest, then take `reached …` out again. Measure again where the depth cannot be.',
    source: 'What a pocket says of its own board, weighed with what the coupon says. That nothing digs less than 0.4 or more than 2.5 times what its coupon says is our own choice.',
};

export const goesOn: Rule = {
    page,
    *examine(plan) {
        for (const { step, laser } of plan.steps) {
            if (step.kind !== 'engrave' || step.reached === undefined || laser?.goesOn === undefined) continue;
            const { message, isSevere } = messageOf(step, step.reached, laser.goesOn, laser.settings === undefined);
            yield finding(page, {
                severity: isSevere ? 'warning' : 'info',
                message,
                where: step.reached.where,
                step: step.index,
                fixes: [{ title: phrase`Take \`reached\` out`, changes: [{ do: 'remove', where: step.reached.where }] }],
            });
        }
    },
};

function messageOf(
    { name }: Engrave,
    { depth: { unit } }: Reached,
    { reached, passes, expected, credible, left }: GoesOn,
    isDone: boolean,
): { message: Message; isSevere: boolean } {
    const after = passes === 1 ? phrase`one pass` : phrase`${passes} passes`;
    if (!credible)
        return {
            message: phrase`${name} is said to be ${showLength(reached, unit)} deep after ${after}, and by the coupon it would be ${showLengthInterval(expected, unit)}: no board is so unlike its coupon. Measure it again; until then the rest is worked out as the coupon says.`,
            isSevere: true,
        };
    if (isDone)
        return {
            message: phrase`${name} is ${showLength(reached, unit)} deep after ${after}: nothing is left to burn. Leave out its passes, and take \`reached\` out before the next piece.`,
            isSevere: true,
        };
    return {
        message: phrase`The files burn only the ${showLength(left, unit)} that are left of ${name} on this piece. Take \`reached\` out before the next one.`,
        isSevere: false,
    };
}
