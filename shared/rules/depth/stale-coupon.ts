import { phrase } from '../../recipe/phrase';
import type { Coupon, Laser, Sheet } from '../../recipe/stock';
import { blankOf, materialName } from '../helpers/blank-names';
import type { Page } from '../page';
import { finding, type Rule, type Said } from '../rule';

const page: Page = {
    id: 'stale-coupon',
    title: 'A coupon from before a change',
    severities: ['warning', 'info'],
    condition:
        'The coupon from which a depth or tone is worked out was burnt before the laser was last serviced, or before the board or veneer was bought that is in the rack now. Told by the days in `burnt`, `serviced` and `bought`; where one is not written, nothing is said.',
    why: 'A new lens, a cleaned mirror or a new tube changes the power and the spot at the wood; another lot has another density and moisture. The depths are those of the laser and the board as they were.',
    mend: 'Burn a new coupon, or at least one square in the middle of it: where that comes out as the fit predicts, set `burnt` to that day and add the row.',
    source: 'Plain comparison of the days that are written.',
};

const again = () =>
    phrase`Burn one square of it again: where that comes out as predicted, set \`burnt\` to that day, else burn a new coupon.`;

export const staleCoupon: Rule = {
    page,
    *examine(plan) {
        const { laser: machine, coupons } = plan.recipe;
        const told = new Set<Coupon>();
        for (const stepPlan of plan.steps) {
            const { step, laser } = stepPlan;
            if (step.kind !== 'engrave' || laser?.settings === undefined || machine === undefined) continue;
            const blank = blankOf(plan, stepPlan);
            const sheet = blank?.blank.sheet;
            const coupon = coupons.find((each) => each.sheet === sheet?.name && each.laser === machine.name);
            if (blank === undefined || sheet === undefined || coupon?.burnt === undefined || told.has(coupon)) continue;
            const said = changedSince(coupon.burnt.value, machine, sheet);
            if (said === undefined) continue;
            told.add(coupon);
            yield finding(page, {
                ...said,
                message: phrase`The coupon of ${materialName(blank)} was burnt on ${coupon.burnt.value}; ${said.message}`,
                where: step.depth?.where ?? step.tone?.where ?? step.where,
                step: step.index,
                related: [...(said.related ?? []), { message: phrase`The coupon is of this day.`, where: coupon.burnt.where }],
            });
        }
    },
};

/** Days are written alike, so that they compare as text. */
function changedSince(burnt: string, { name, serviced }: Laser, { bought }: Sheet): Omit<Said, 'where'> | undefined {
    if (serviced !== undefined && serviced.value > burnt) {
        const what = serviced.note === undefined ? '' : ` (${serviced.note})`;
        return {
            severity: 'warning',
            message: phrase`${name} was serviced on ${serviced.value}${what}, so it may burn otherwise now. ${again()}`,
            related: [{ message: phrase`It was serviced here.`, where: serviced.where }],
        };
    }
    if (bought === undefined || bought.value <= burnt) return undefined;
    return {
        severity: 'info',
        message: phrase`what is in the rack was bought on ${bought.value}, so it is another lot. ${again()}`,
        related: [{ message: phrase`It was bought here.`, where: bought.where }],
    };
}
