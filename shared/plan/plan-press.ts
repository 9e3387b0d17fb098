import { type Burning, type Pressed, virtualPress } from '../bench/virtual-press';
import { spotOf } from '../burn/beam';
import { doseOf, sigmaOf } from '../burn/dose';
import type { DepthLaw } from '../burn/law';
import type { Recipe } from '../recipe/recipe';
import { depthLaw } from './depth-law';
import type { LaserPlan } from './laser-plan';
import type { Memo } from './memo';
import type { Plan } from './plan';

/**
 * Presses an inlay's halves together as the beam burns them; see `virtualPress`. Worked out only when
 * somebody asks, and kept. Undefined when the step is no inlay, or settings, spot or thickness are not known.
 *
 * @param tell called now and then with the part that is done; may throw to give up
 */
export function planPress(plan: Plan, step: number, memo: Memo, tell: (part: number) => void = () => {}): Pressed | undefined {
    const inlay = plan.steps[step]?.inlay;
    const spot = spotOf(plan.recipe.laser);
    if (inlay?.veneer === undefined || spot === undefined) return undefined;
    const sigma = sigmaOf(spot.diameter);
    const { pocketLaser, reliefLaser, turned, film, veneer, below } = inlay;
    const pocket = burningOf(plan, pocketLaser, sigma, memo);
    const relief = burningOf(plan, reliefLaser, sigma, memo);
    if (pocket === undefined || relief === undefined) return undefined;
    const shapes = `${memo.keyOf(turned)} ${memo.keyOf(pocketLaser.region)}`;
    const figures = JSON.stringify([film.value, veneer.value, below.value, numbersOf(pocket), numbersOf(relief)]);
    return memo.get('press', `${shapes} ${figures}`, () =>
        virtualPress(
            {
                pocket: { ...pocket, region: pocketLaser.region },
                veneer: { ...relief, standing: turned },
                thickness: veneer.value,
                film: film.value,
                sanded: below.value,
            },
            tell,
        ),
    );
}

function burningOf(plan: Plan, laser: LaserPlan, sigma: number, memo: Memo): Burning | undefined {
    if (laser.settings === undefined) return undefined;
    return { law: lawOf(plan.recipe, laser, memo), sigma, dose: doseOf(laser.settings), passes: laser.settings.passes };
}

function numbersOf({ law, sigma, dose, passes }: Burning): number[] {
    return [law.threshold, law.energy, law.fade, sigma, dose, passes];
}

function lawOf(recipe: Recipe, laser: LaserPlan, memo: Memo): DepthLaw {
    return depthLaw(recipe, recipe.blanks.find((blank) => blank.name === laser.blank)?.sheet, memo);
}
