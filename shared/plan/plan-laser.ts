import { spotOf } from '../burn/beam';
import { doseOf, sigmaOf } from '../burn/dose';
import { type Wall, wallOf } from '../burn/wall';
import { union } from '../geometry/boolean';
import { area, perimeter } from '../geometry/measure';
import { grow } from '../geometry/offset';
import type { Region } from '../geometry/region';
import { mirror } from '../geometry/transform';
import type { Recipe } from '../recipe/recipe';
import type { Cut, Engrave, Inlay } from '../recipe/step';
import { depthLaw } from './depth-law';
import type { LaserPlan, PlacedArt } from './laser-plan';
import { machineTime } from './machine-time';
import { type PlacingTable, place } from './place-art';
import { focusOfPasses } from './plan-focus';
import { type Solved, solveSettings } from './solve-settings';

/** Why a step could not be worked out, in a maker's words. */
export interface Unplanned {
    readonly unplanned: string;
}

/**
 * Works out one laser step: what it burns on its blank, how deep, with which settings and how long.
 * The edges of an inlay's halves are drawn so that the clearance is what comes out: each half gives
 * half of it, less what the width of the beam adds by itself.
 */
export function planLaser(step: Engrave | Cut, recipe: Recipe, table: PlacingTable): LaserPlan | Unplanned {
    const placed: PlacedArt[] = [];
    for (const [index, placement] of step.placements.entries()) {
        const one = place(placement, index, table);
        if (one === undefined) return { unplanned: 'its art could not be read' };
        placed.push(one);
    }
    if (placed.length === 0) return { unplanned: 'it has no art' };
    const axis = step.mirror.length % 2 === 1 ? axisOf(placed) : undefined;
    const solved = solveSettings(step, table.blank, recipe, table.memo);
    const wall = wallOfStep(solved, recipe, table);
    const clearance = clearanceOf(step, recipe);
    const edge = (step.offset?.value ?? 0) + (clearance === undefined ? 0 : clearance / 2 - (wall?.growth ?? 0));
    const region = burntRegion(placed, axis, edge, table);
    const scanAngle = scanAngleOf(step, table.blank.grain);
    const { memo } = table;
    const outlinePasses = step.kind === 'cut' ? (solved.settings?.passes ?? step.passes?.value ?? 1) : (step.outline?.value ?? 0);
    const focus = focusOfPasses(step, solved, recipe.laser);
    const regionKey = memo.keyOf(region);
    return {
        step,
        blank: table.blank.name,
        region,
        area: memo.get('area', regionKey, () => area(region)),
        perimeter: memo.get('perimeter', regionKey, () => perimeter(region)),
        placed,
        ...(axis === undefined ? {} : { mirrorAxis: axis }),
        ...solved,
        scanAngle,
        outlinePasses,
        ...(focus === undefined ? {} : { focus }),
        taper: wall?.taper ?? 0,
        growth: wall?.growth ?? 0,
        edge,
        machine: machineTime(
            [{ region, step, scanAngle, outlinePasses, focus, settings: solved.settings, laser: recipe.laser }],
            table.blank.size?.height ?? 0,
            memo,
        ),
    };
}

function burntRegion(placed: readonly PlacedArt[], axis: number | undefined, edge: number, { memo }: PlacingTable): Region {
    const regions = placed.map((one) => one.region);
    const whole =
        regions.length === 1
            ? regions[0]!
            : memo.get('united', regions.map((region) => memo.keyOf(region)).join(' '), () => union(regions));
    const grown = edge === 0 ? whole : memo.get('grown', `${memo.keyOf(whole)} ${edge}`, () => grow(whole, edge));
    return axis === undefined ? grown : memo.get('mirrored', `${memo.keyOf(grown)} ${axis}`, () => mirror(grown, axis));
}

/** A step mirrors about the upright through the middle of its placements, so that its art stays where it was put. */
function axisOf(placed: readonly PlacedArt[]): number {
    const xs = placed.map((one) => one.centre.x);
    return (Math.min(...xs) + Math.max(...xs)) / 2;
}

/** The clearance that an inlay asks of this half; undefined for a step that no inlay uses. */
function clearanceOf(step: Engrave | Cut, recipe: Recipe): number | undefined {
    if (step.kind !== 'engrave') return undefined;
    const inlay = recipe.steps.find(
        (other): other is Inlay =>
            other.kind === 'inlay' && (other.relief.value === step.name || other.pocket.value === step.name),
    );
    return inlay === undefined ? undefined : Math.max(0, inlay.clearance?.value ?? 0);
}

function wallOfStep({ settings, tone }: Solved, recipe: Recipe, { blank, memo }: PlacingTable): Wall | undefined {
    const spot = spotOf(recipe.laser);
    if (settings === undefined || spot === undefined || tone !== undefined) return undefined;
    return wallOf(depthLaw(recipe, blank.blank.sheet, memo), doseOf(settings), sigmaOf(spot.diameter), settings.passes);
}

/** Across the grain when nothing else is said; along the width when there is no grain to go by. */
function scanAngleOf(step: Engrave | Cut, grain: number | undefined): number {
    const direction = step.kind === 'engrave' ? step.scan?.direction : undefined;
    if (typeof direction === 'object') return direction.value;
    if (grain === undefined) return 0;
    return direction === 'along' ? grain : grain + Math.PI / 2;
}
