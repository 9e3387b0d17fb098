import { intervalOf } from '../quantity/interval';
import type { Blank } from '../recipe/recipe';
import type { BlankPlan } from './plan';

export function planBlank(blank: Blank): BlankPlan {
    const thickness = blank.sheet?.thickness;
    const size = blank.size;
    return {
        blank,
        name: blank.name,
        ...(size === undefined ? {} : { size: { width: size.width.value, height: size.height.value } }),
        ...(thickness === undefined ? {} : { thickness: intervalOf(thickness) }),
        ...(blank.grain === undefined ? {} : { grain: blank.grain === 'width' ? 0 : Math.PI / 2 }),
    };
}
