import { fillMix } from '../bench/fill-volume';
import { batchesFor } from '../bench/mix-batches';
import { poursFor } from '../bench/pours';
import type { Interval } from '../quantity/interval';
import type { Recipe } from '../recipe/recipe';
import type { Engrave, Fill } from '../recipe/step';
import type { Resin } from '../recipe/stock';
import type { LaserPlan } from './laser-plan';
import type { FillPlan } from './plan';

/** Resin above the face when the step does not say. @commonPractice */
export const usualOverfill = 0.1;

/** What one fill takes, for one piece and for the run: its share of the depth, its pours, its cups. */
export function planFill(step: Fill, laser: LaserPlan & { readonly depth: Interval }, recipe: Recipe): FillPlan {
    const { depth } = laser;
    const layers = recipe.steps.filter((other) => other.kind === 'fill' && other.pocket.value === step.pocket.value);
    const of = Math.max(1, layers.length);
    const number = layers.findIndex(({ index }) => index === step.index) + 1;
    const layer = { number: Math.max(1, number), of, depth: depth.value / of };
    const { resin } = step;
    // Only the last layer stands above the face.
    const overfill = layer.number === of ? (step.overfill?.value ?? usualOverfill) * of : (step.overfill?.value ?? 0);
    const mix = fillMix(laser.area, layer.depth, overfill, resin ?? { name: '', where: step.where, colour: '#888888' });
    const deepest = resin?.deepestPour;
    return {
        pocket: laser.step as Engrave,
        area: laser.area,
        depth,
        mix,
        layer,
        pours: { ...poursFor(layer.depth, deepest && deepest.value + deepest.tolerance), between: betweenPours(resin) },
        cups: batchesFor(recipe.make, resin?.potLife?.value ?? Number.POSITIVE_INFINITY),
    };
}

/** As soon as the next layer bonds; after the whole cure where the resin has no such window. */
function betweenPours(resin: Resin | undefined): number {
    const window = resin?.recoat;
    return window === undefined ? (resin?.cure?.value ?? 0) : Math.max(0, window.value - window.tolerance);
}
