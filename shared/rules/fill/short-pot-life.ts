import { benchTimes } from '../../bench/bench-times';
import { batchesFor } from '../../bench/mix-batches';
import type { FillPlan } from '../../plan/plan';
import { showMass, showTime } from '../../quantity/show';
import type { Finding } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Resin } from '../../recipe/stock';
import type { Resting } from '../graded';
import { calledInShop } from '../helpers/laid-over';
import { type OwnMinutes, ownMinutes, pours } from '../helpers/own-minutes';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'short-pot-life',
    title: 'Pot life shorter than the run',
    severities: ['info', 'warning', 'hint'],
    condition:
        'So many pieces are made that the resin stiffens in the cup before the last one is filled, or `do` steps beside the fill that pour take longer than the pot life leaves; or a cup would hold more than the pot life holds for (`largest mix` in the stock).',
    why: 'Resin that has begun to set pulls threads, traps air and does not level. The more of it stands in a cup, the warmer it gets and the sooner it sets; a full cup can boil, smoke and melt.',
    mend: 'Mix several smaller cups, one after the other, pour each out at once into a wide, shallow place, or take a slower hardener.',
    source: 'Mixing counts as 8 min and filling as 4 min for each piece: common practice, no source. That pot life is measured on 100 g of the mix, and is shorter for more, was seen in a glossary and two notes of makers of epoxy; that 100 g left in a cup can get to 204 °C, in a maker’s page on safety. How much shorter was not found.',
};

export const shortPotLife: Rule = {
    page,
    *examine(plan) {
        for (const { fill, step } of plan.steps) {
            const resin = step.kind === 'fill' ? step.resin : undefined;
            if (fill === undefined || resin?.potLife === undefined) continue;
            const { make } = plan.recipe;
            const told =
                inOwnMinutes(ownMinutes(plan, step, pours), resin) ?? inTime(fill, resin, make) ?? inMass(fill, resin, make);
            if (told === undefined) continue;
            yield finding(page, { ...told, where: step.where, step: step.index });
        }
    },
};

type Told = Pick<Finding, 'severity' | 'message' | 'related'> & Resting;

/** What the maker's own minutes for one piece say. */
function inOwnMinutes(own: OwnMinutes | undefined, resin: Resin): Told | undefined {
    const left = resin.potLife!.value - benchTimes.mixAndFill.setUp;
    if (own === undefined || own.time <= left) return undefined;
    return {
        severity: 'warning',
        rests: [resin.potLife!.where],
        message: phrase`${calledInShop(resin)} stays fluid for ${showTime(resin.potLife!.value)}, of which mixing takes ${showTime(benchTimes.mixAndFill.setUp)}; pouring takes ${showTime(own.time)} by your own steps. Pour out of ${Math.max(2, Math.ceil(own.time / Math.max(60, left)))} cups, mixed one after the other, or take a slower resin.`,
        related: [
            { message: phrase`The pot life is written here.`, where: resin.potLife!.where },
            ...own.steps.map(({ where }) => ({ message: phrase`These minutes count.`, where })),
        ],
    };
}

/** What the time alone says: too short for one piece, or for all of them out of one cup. */
function inTime(fill: FillPlan, resin: Resin, pieces: number): Told | undefined {
    const potLife = resin.potLife!;
    const { tooSlow, count } = batchesFor(pieces, potLife.value);
    if (!tooSlow && (count < 2 || fill.cups.count > count)) return undefined;
    const fluid = phrase`${calledInShop(resin)} stays fluid for ${showTime(potLife.value)}`;
    return {
        severity: tooSlow ? 'warning' : 'info',
        rests: [potLife.where],
        message: tooSlow
            ? phrase`${fluid}, which is hardly enough for one piece. Take a slower resin, or mix it in smaller cups.`
            : phrase`${fluid}: for ${pieces} pieces mix ${count} cups, each for ${fill.cups.pieces}.`,
        related: [{ message: phrase`The pot life is written here.`, where: potLife.where }],
    };
}

/** What the mass in a cup says. */
function inMass({ cups, mix }: FillPlan, resin: Resin, pieces: number): Told | undefined {
    const most = resin.largestMix;
    const each = mix.mass;
    if (most === undefined || each === undefined) return undefined;
    const largest = most.value + most.tolerance;
    const alone = batchesFor(pieces, resin.potLife!.value).pieces * each;
    if (alone <= largest) return undefined;
    const potLife = `its pot life of ${showTime(resin.potLife!.value)} holds for ${showMass(largest)}`;
    const split = phrase`in ${Math.ceil(each / largest - 1e-9)} cups`;
    return {
        severity: 'info',
        rests: [most.where],
        message:
            each > largest
                ? phrase`One piece takes ${showMass(each)} of ${calledInShop(resin)}; ${potLife}, and more warms itself up in the cup. Pour it out at once, or mix it ${split}.`
                : phrase`${showMass(alone)} of ${calledInShop(resin)} in one cup set sooner: ${potLife}. For ${pieces} pieces mix ${cups.count} cups, each for ${cups.pieces}.`,
        related: [{ message: phrase`The largest mix is written here.`, where: most.where }],
    };
}
