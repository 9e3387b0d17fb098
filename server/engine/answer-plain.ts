import { placeholderPicture } from '../../shared/art/raster/placeholder';
import { examineCoupons } from '../../shared/rules/coupon/examine-coupons';
import { pageText } from '../../shared/rules/page';
import { couponSheets, layOutCoupon } from '../../shared/sheets/coupon-sheets';
import { couponFit } from '../../shared/view/coupon-fit';
import { runFacts } from '../../shared/view/run-facts';
import { rulePage } from '../rule-pages';
import type { Answers, Job, PlainJob } from './jobs';

let picture: Uint8Array | undefined;

const answers: { readonly [Do in PlainJob['do']]: (job: Extract<PlainJob, { readonly do: Do }>) => Answers[Do] } = {
    coupons: ({ coupons }) => examineCoupons(coupons),
    fit: ({ coupon }) => couponFit(coupon),
    'run-facts': ({ recipe, run }) => runFacts(recipe, run),
    // The same each time.
    placeholder: () => {
        picture ??= placeholderPicture();
        return picture;
    },
    page: ({ rule }) => {
        const page = rulePage(rule);
        return page === undefined ? null : pageText(page);
    },
    'coupon-layout': ({ material, laser, options }) => layOutCoupon(material, laser, options),
    'coupon-sheets': ({ material, laser, layout }) => couponSheets(material, laser, layout),
};

export function isPlain(job: Job): job is PlainJob {
    return Object.hasOwn(answers, job.do);
}

export function answerPlain(job: PlainJob): Answers[PlainJob['do']] {
    const answer = answers[job.do] as (job: PlainJob) => Answers[PlainJob['do']];
    return answer(job);
}
