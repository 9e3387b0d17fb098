import type { CouponAims } from '../burn/coupon-sheet';
import { showLength } from '../quantity/show';
import { depthLaw } from './depth-law';
import type { Memo } from './memo';
import type { Plan } from './plan';

/**
 * What a recipe asks of the coupon of a board or veneer on a laser: the settings of its engravings to a depth, and the law that they
 * come from. Undefined where it asks nothing of it.
 */
export function depthAims(plan: Plan, sheet: string, laser: string, memo: Memo): CouponAims | undefined {
    const { recipe, blanks } = plan;
    if (recipe.laser?.name !== laser) return undefined;
    const blank = blanks.find((one) => one.blank.sheet?.name === sheet);
    const aims = plan.steps.flatMap(({ step, laser: burn, blank: name }) => {
        const settings = burn?.settings;
        if (step.kind !== 'engrave' || settings === undefined || burn?.tone !== undefined || burn?.goesOn !== undefined)
            return [];
        if (blanks.find((one) => one.name === name)?.blank.sheet?.name !== sheet || !(settings.gives.value > 0)) return [];
        const { power, speed, pitch, passes } = settings;
        const depth = showLength((burn?.depth ?? settings.gives).value);
        return [{ of: `${recipe.name}: ${step.name}, ${depth}`, power, speed, pitch, passes }];
    });
    return blank === undefined || aims.length === 0 ? undefined : { law: depthLaw(recipe, blank.blank.sheet, memo), aims };
}
