import { showLength, showLengthInterval, showRatio } from '../quantity/show';
import type { ToldPocket } from './board-runs';

/** "0.53 mm deep, planned 0.54 mm ± 0.05 mm (98 %)", without a full stop. */
export function pocketWords({ pocket, told, guess }: ToldPocket): string {
    const measured = `${showLength(pocket.depth)} deep`;
    if (told === undefined) return `${measured}; coupon, laser or wood have changed since`;
    const how = pocket.planned !== undefined ? 'planned' : guess === true ? 'guessed from its settings' : 'by its settings';
    const part = told.value > 0 ? ` (${showRatio(pocket.depth / told.value)})` : '';
    return `${measured}, ${how} ${showLengthInterval(told)}${part}`;
}
