import type { Change } from './change';

/** Figures of which less is better: work, money, and what has to be sanded off. A shorter wait is not: what waits may need it. */
const lessIsBetter =
    /^(?:machine|hands|attended|laser|sittings|material|work|overhead|cost|cost of one|stands proud|seam|veneer on the board|pocket left empty)$/;
/** Figures of which more is better: what is left of the wood. */
const moreIsBetter = /^(?:floor left|thinnest wall|veneer left|veneer left at worst|goes in|marks)$/;

/** Whether a figure got better or worse; undefined where it is neither, as a depth or a setting is. */
export function betterOrWorse({ label, amounts }: Change): 'better' | 'worse' | undefined {
    const [was, is] = [amounts?.before?.value, amounts?.after?.value];
    if (was === undefined || is === undefined || was === is) return undefined;
    if (lessIsBetter.test(label)) return is < was ? 'better' : 'worse';
    return moreIsBetter.test(label) ? (is > was ? 'better' : 'worse') : undefined;
}
