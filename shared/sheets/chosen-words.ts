import type { ChosenFor } from '../burn/coupon-sheet';
import { showLength } from '../quantity/show';
import { type Message, phrase } from '../recipe/phrase';

/** What chosen squares bring, a sentence for each depth that is asked for; where there are none, why not. */
export function chosenWords({ aims, apart }: ChosenFor): Message[] {
    const words = aims.map(({ of, half, least, after }) => {
        const all = after.at(-1);
        const [first = '', ...others] = of;
        const more = others.length === 0 ? '' : phrase` and ${others.length} more`;
        const now = phrase`${first}${more}: ± ${showLength(half)} now`;
        if (all === undefined)
            return phrase`${now}, and no square narrows it by much: ± ${showLength(least)} is how boards, places and readings differ. It is enough.`;
        const two = after.length > 2 ? phrase`, ± ${showLength(after[1]!)} with the two that tell most` : '';
        return phrase`${now}${two}, about ± ${showLength(all)} with ${after.length === 1 ? phrase`this square` : phrase`all ${after.length}`}. ± ${showLength(least)} stays: boards, places and readings differ.`;
    });
    if (apart.length === 0) return words;
    const numbers = apart.length === 1 ? phrase`Square ${apart[0]} lies` : phrase`Squares ${apart.join(' and ')} lie`;
    const show = apart.length === 1 ? 'it shows' : 'they show';
    return [...words, phrase`${numbers} apart from what is asked: ${show} whether depth goes with the dose as it is taken to.`];
}
