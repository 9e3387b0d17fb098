import { type BlankSize, originOn, originSentence } from '../plan/origin';
import { showNumber } from '../quantity/show';
import type { Laser } from '../recipe/stock';

/** What the page of a drawing is, and where in it the machine's origin lies: SVG has a corner of its own, and Y downwards. */
export function pageSentence(laser: Laser | undefined, size: BlankSize | undefined, what: 'blank' | 'coupon'): string {
    const { x, y } = originOn(size, laser);
    return `The page is the ${what}, one unit is one millimetre. On the machine ${originSentence(laser, what)}: in this drawing ${showNumber(x, 3)}, ${showNumber(y, 3)}, with Y downwards.`;
}
