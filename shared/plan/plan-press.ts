import { type BurntHalf, type Pressed, virtualPress } from '../bench/virtual-press';
import { spotOf } from '../burn/beam';
import { doseOf, sigmaOf } from '../burn/dose';
import type { DepthLaw } from '../burn/law';
import { subtract } from '../geometry/boolean';
import { grow } from '../geometry/offset';
import type { Region } from '../geometry/region';
import type { Recipe } from '../recipe/recipe';
import { depthLaw } from './depth-law';
import type { LaserPlan } from './laser-plan';
import type { Memo } from './memo';
import type { Plan } from './plan';

/** How far the walls of a part reach beyond its edge, in sigmas of the beam. */
const wallReach = 5;

/**
 * Presses an inlay's halves together as the beam burns them; see `virtualPress`. Takes up to some
 * seconds for large art, so it is worked out only when somebody asks, and kept. Undefined when the
 * step is no inlay, or settings, spot or thickness are not known.
 */
export function planPress(plan: Plan, step: number, memo: Memo): Pressed | undefined {
    const inlay = plan.steps[step]?.inlay;
    const spot = spotOf(plan.recipe.laser);
    if (inlay?.veneer === undefined || spot === undefined) return undefined;
    const sigma = sigmaOf(spot.diameter);
    const { pocketLaser, reliefLaser, turned, film, veneer } = inlay;
    const shapes = `${memo.keyOf(turned)} ${memo.keyOf(pocketLaser.region)}`;
    const laws = [pocketLaser, reliefLaser].map((laser) => memo.keyOf(lawOf(plan.recipe, laser, memo))).join(' ');
    const figures = JSON.stringify([sigma, film.value, veneer.value, pocketLaser.settings, reliefLaser.settings]);
    return memo.get('press', `${shapes} ${laws} ${figures}`, () => {
        const parts = grow(turned, wallReach * sigma);
        // Around the parts all of the veneer is burnt, as far as the beam can matter.
        const burnt = subtract(grow(turned, 2 * wallReach * sigma + 0.1), turned);
        const pocket = halfOf(plan, pocketLaser, pocketLaser.region, sigma, memo);
        const half = halfOf(plan, reliefLaser, burnt, sigma, memo);
        if (pocket === undefined || half === undefined) return undefined;
        return virtualPress({ pocket, veneer: half, parts, thickness: veneer.value, film: film.value });
    });
}

function halfOf(plan: Plan, laser: LaserPlan, region: Region, sigma: number, memo: Memo): BurntHalf | undefined {
    if (laser.settings === undefined) return undefined;
    return { region, law: lawOf(plan.recipe, laser, memo), sigma, dose: doseOf(laser.settings), passes: laser.settings.passes };
}

function lawOf(recipe: Recipe, laser: LaserPlan, memo: Memo): DepthLaw {
    return depthLaw(recipe, recipe.blanks.find((blank) => blank.name === laser.blank)?.sheet, memo);
}
