import type { SettlingSquare } from '../../burn/settling-square';
import type { LaserPlan } from '../../plan/laser-plan';
import type { Plan } from '../../plan/plan';
import { showLength, showNumber, showRatio } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { type Message, phrase } from '../../recipe/phrase';
import type { Coupon } from '../../recipe/stock';
import { settingsOf } from './square-of';

/** A square that leaves this part of the range settles nothing. */
const SETTLES = 0.9;

/** What a measured square would settle, as a sentence that follows another, and the row to be filled in for the coupon. */
export interface Settled {
    readonly words: Message | '';
    readonly fixes: Fix[];
}

const nothing: Settled = { words: '', fixes: [] };

/** The square that would narrow the range of a step's depth; nothing where none does by much. */
export function settleBySquare(plan: Pick<Plan, 'blanks' | 'recipe'>, laser: LaserPlan): Settled {
    const square = laser.settings?.settling;
    if (square === undefined || !(square.narrowed < SETTLES * square.half)) return nothing;
    const coupon = couponOf(plan, laser);
    const narrows = phrase`that narrows ± ${showLength(square.half)} to about ± ${showLength(square.narrowed)}`;
    const words =
        coupon !== undefined && isOpen(coupon, square)
            ? phrase` Measure the square with ${settingsOf(square)} that stands open in the coupon: ${narrows}.`
            : phrase` Burn a square with ${settingsOf(square)}: ${narrows}.`;
    return { words, fixes: coupon === undefined ? [] : addSquare(coupon, square) };
}

/** The coupon of the sheet that a step burns, on the recipe's laser. */
function couponOf({ blanks, recipe }: Pick<Plan, 'blanks' | 'recipe'>, { blank }: LaserPlan): Coupon | undefined {
    const sheet = blanks.find(({ name }) => name === blank)?.blank.sheet?.name;
    return recipe.coupons.find((each) => each.sheet === sheet && each.laser === recipe.laser?.name);
}

export type Square = Pick<SettlingSquare, 'power' | 'powerRatio' | 'speed' | 'passes'>;

export function isOpen({ open = [] }: Coupon, square: Square): boolean {
    return open.includes(rowOf(square));
}

/** Adds a square to a coupon that is to be burnt and measured; nothing where the coupon stands in no text. */
export function addSquare({ sheet, whole, ...coupon }: Coupon, square: Square): Fix[] {
    if (whole === undefined || isOpen({ sheet, ...coupon }, square)) return [];
    return [
        {
            title: phrase`Add this square to the coupon of ${sheet}`,
            untilMeasured: true,
            changes: [{ do: 'add', block: whole, statement: `// ${rowOf(square)} gives … mm` }],
        },
    ];
}

/** A square as a row of a coupon up to its depth, in the words that `burnWords` of the language prints. */
function rowOf({ power, powerRatio, speed, passes }: Square): string {
    const strength = powerRatio === undefined ? `${showNumber(power, 2)} W` : showRatio(powerRatio);
    return `burn ${strength} at ${showNumber(speed, 1)} mm/s${passes > 1 ? ` x ${passes}` : ''}`;
}
