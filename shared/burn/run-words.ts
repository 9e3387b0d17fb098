import { showLength, showLengthInterval, showNumber, showRatio } from '../quantity/show';
import type { MeasuredPocket } from '../recipe/run';
import type { ToldPocket } from './board-runs';

/** " (0.18, 0.36, 0.53 mm after each pass; at 19 °C)", or nothing. */
function besides({ passDepths = [], temperature }: MeasuredPocket): string {
    const passes = passDepths.length === 0 ? [] : [`${passDepths.map((each) => showLength(each)).join(', ')} after each pass`];
    const warm = temperature === undefined ? [] : [`at ${showNumber(temperature, 0)} °C`];
    const all = [...passes, ...warm];
    return all.length === 0 ? '' : ` (${all.join('; ')})`;
}

/** "0.53 mm deep, planned 0.54 mm ± 0.05 mm (98 %)", without a full stop. */
export function pocketWords({ pocket, told, guess }: ToldPocket): string {
    const measured = `${showLength(pocket.depth)} deep${besides(pocket)}`;
    if (told === undefined) return `${measured}; coupon, laser or wood have changed since`;
    const how = pocket.planned !== undefined ? 'planned' : guess === true ? 'guessed from its settings' : 'by its settings';
    const part = told.value > 0 ? ` (${showRatio(pocket.depth / told.value)})` : '';
    return `${measured}, ${how} ${showLengthInterval(told)}${part}`;
}
