import type { DepthLaw } from '../../burn/law';
import { type Message, phrase } from '../../recipe/phrase';
import type { Page } from '../page';
import { finding } from '../rule';
import type { CouponRule } from './coupon-rule';

const page: Page = {
    id: 'few-coupon-rows',
    title: 'A coupon that tells little',
    severities: ['info'],
    condition:
        'The rows are too few, or too much alike, to tell the dose at which the wood begins to burn from the energy that it takes, with at least three rows to spare; or their fit does not converge.',
    why: 'A line always runs through two points, however wrong they are. Depths then have wide intervals, and lean on a guess from the wood’s density.',
    mend: 'Burn and measure more squares: six or more, from just digging to as deep as you go, some of them in several passes.',
    source: 'Degrees of freedom of the fit; the guess is weighed in as if it had been measured with its own errors.',
};

export const fewCouponRows: CouponRule = {
    page,
    *examine({ coupon, law, rows }) {
        // A coupon without any row is said to be empty by the text's own findings.
        const message = rows.length === 0 ? undefined : messageOf(law, rows.length);
        if (message !== undefined) yield finding(page, { severity: 'info', message, where: coupon.where });
    },
};

function messageOf({ notes, degreesOfFreedom = 0 }: DepthLaw, count: number): Message | undefined {
    const squares = `${count} ${count === 1 ? 'square' : 'squares'}`;
    if (notes.includes('no-depth')) return phrase`No square of this coupon took anything off: burn stronger ones.`;
    if (notes.includes('falls-with-dose')) return undefined; // coupon-contradicts says it
    if (notes.includes('not-converged'))
        return phrase`The fit of these ${squares} did not converge: depths lean on a guess from density. Measure them again, and burn more.`;
    if (notes.includes('doses-alike'))
        return phrase`The doses of these ${squares} are too much alike to tell where burning begins: they are weighed against a guess from density.`;
    if (notes.includes('combined'))
        return phrase`${squares} ${count === 1 ? 'is' : 'are'} too few to stand alone: ${count === 1 ? phrase`it is` : phrase`they are`} weighed against a guess from density.`;
    if (notes.includes('few-rows'))
        return phrase`${squares} leave ${degreesOfFreedom === 1 ? phrase`one row` : phrase`${degreesOfFreedom} rows`} to spare: depths have wide intervals.`;
    return undefined;
}
