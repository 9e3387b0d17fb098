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

/** What a fill is poured into. Areas mm2, volumes mm3, lengths mm. */
export interface Hollow {
    readonly area: number;
    /** Of what was dug, up to the face as it is now. */
    readonly volume: number;
    /** From the face down to what was dug, in most of it. */
    readonly depth: Interval;
    /** The same where it is deepest. */
    readonly deepest: number;
}

/** As the beam alone leaves it. */
export function hollowOf({ area, depth }: LaserPlan & { readonly depth: Interval }): Hollow {
    return { area, volume: area * depth.value, depth, deepest: depth.value };
}

/** How much of the hollow a layer takes: a share of the room that the layers before it have left, and what stands above. */
export function pouredHeight(step: Fill, { number, of }: FillPlan['layer']): { readonly share: number; readonly over: number } {
    const share = 1 / (of - number + 1);
    // Only the last layer stands above the face.
    if (number === of) return { share, over: step.overfill?.value ?? usualOverfill };
    return { share: share * (1 + (step.overfill?.value ?? 0)), over: 0 };
}

/** What one fill takes, for one piece and for the run: its share of the depth, its pours, its cups. */
export function planFill(step: Fill, pocket: Engrave, hollow: Hollow, recipe: Recipe): FillPlan {
    const { area, depth } = hollow;
    const layers = recipe.steps.filter((other) => other.kind === 'fill' && other.pocket.value === step.pocket.value);
    const of = Math.max(1, layers.length);
    const number = layers.findIndex(({ index }) => index === step.index) + 1;
    const each = hollow.deepest / of;
    const layer = { number: Math.max(1, number), of, depth: depth.value / of };
    const { resin } = step;
    const overfill = layer.number === of ? (step.overfill?.value ?? usualOverfill) * of : (step.overfill?.value ?? 0);
    const mean = area > 0 ? hollow.volume / area : depth.value;
    const mix = fillMix(area, mean / of, overfill, resin ?? unknownResin(step));
    const deepest = resin?.deepestPour;
    return {
        pocket,
        area,
        depth,
        mix,
        layer,
        pours: { ...poursFor(each, deepest && deepest.value + deepest.tolerance), between: betweenPours(resin) },
        cups: batchesFor(recipe.make, resin?.potLife?.value ?? Number.POSITIVE_INFINITY, piecesOf(resin, mix.mass)),
    };
}

/** Pieces that the largest mix does for. */
function piecesOf(resin: Resin | undefined, mass: number | undefined): number | undefined {
    const most = resin?.largestMix;
    return most === undefined || mass === undefined || !(mass > 0) ? undefined : (most.value + most.tolerance) / mass;
}

/** As soon as the next layer bonds; after the whole cure where the resin has no such window. */
function betweenPours(resin: Resin | undefined): number {
    const window = resin?.recoat;
    return window === undefined ? (resin?.cure?.value ?? 0) : Math.max(0, window.value - window.tolerance);
}

function unknownResin({ where }: Fill): Resin {
    return { name: '', where, colour: '#888888', kinds: [], over: [] };
}
