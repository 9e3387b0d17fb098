import { cutEdge, type HalfEdge } from '../bench/half-edge';
import { type Pressed, type PressHalves, virtualPress } from '../bench/virtual-press';
import { spotOf } from '../burn/beam';
import { doseOf, sigmaOf } from '../burn/dose';
import type { DepthLaw } from '../burn/law';
import { hollowFloor } from '../piece/column';
import type { Cell } from '../piece/face';
import type { Recipe } from '../recipe/recipe';
import { leanOf, tightnessOf } from './cut-half';
import { depthLaw } from './depth-law';
import type { LaserPlan } from './laser-plan';
import type { Memo } from './memo';
import type { InlayPlan, Plan } from './plan';
import { onPocket } from './plan-inlay';
import { lineOf } from './plan-outline';
import { cellsCarrying, cellsUnder } from './receiving-place';

/** An inlay's halves as the beam burns them. Undefined when the step is no inlay, or settings, spot or thickness are not known. */
export function halvesOf(plan: Plan, step: number, memo: Memo): PressHalves | undefined {
    const inlay = plan.steps[step]?.inlay;
    const spot = spotOf(plan.recipe.laser);
    if (inlay?.veneer === undefined || spot === undefined) return undefined;
    const sigma = sigmaOf(spot.diameter);
    const { pocketLaser, reliefLaser, turned, film, veneer, below, half } = inlay;
    const pocket = edgeOf(plan, pocketLaser, sigma, memo);
    const relief = edgeOf(plan, reliefLaser, sigma, memo, !inlay.turnedOver);
    if (pocket === undefined || relief === undefined) return undefined;
    return {
        pocket: { ...pocket, region: pocketLaser.region },
        veneer: {
            ...relief,
            standing: turned,
            // What is burnt into the face of a part that lies face up is in nobody's way.
            lower: (inlay.turnedOver ? [...half.lower, ...half.hollows] : []).map(({ region, more }) => ({
                region: onPocket(region, inlay, memo),
                more,
            })),
        },
        thickness: veneer.value,
        film: film.value,
        sanded: below.value,
        ...floorsUnder(plan, step, inlay, memo),
    };
}

/** Floors that differ by less than this are one, mm. */
const SAME_FLOOR = 0.005;

/** What the steps between the pocket's burn and the inlay, and those before it, have made of the pocket's floor. */
function floorsUnder(plan: Plan, step: number, inlay: InlayPlan, memo: Memo): Pick<PressHalves, 'sunk' | 'floors' | 'carries'> {
    const { pocketLaser, pocket } = inlay;
    const levelAt = (moment: number) => plan.faces[moment]?.find(({ blank }) => blank === pocketLaser.blank);
    const [burnt, face] = [levelAt(pocket.index), levelAt(step)];
    if (burnt === undefined || face === undefined || face.unknownSince !== undefined || pocketLaser.depth === undefined)
        return {};
    const sunk = face.level.value - burnt.level.value;
    const alone = pocketLaser.depth.value - sunk;
    const more = ({ column }: Cell): number => hollowFloor(column).value - face.level.value - alone;
    const floors = cellsUnder(face, inlay, memo).map((cell) => ({ region: cell.region, more: more(cell) }));
    const carrying = cellsCarrying(face, inlay, memo).map(more);
    return {
        sunk,
        floors: floors.filter((floor) => Math.abs(floor.more) > SAME_FLOOR),
        carries: carrying.length === 0 ? 0 : Math.min(...carrying),
    };
}

/**
 * Presses an inlay's halves together; see `virtualPress`. Worked out only when somebody asks, and kept.
 *
 * @param tell called now and then with the part that is done; may throw to give up
 */
export function planPress(plan: Plan, step: number, memo: Memo, tell: (part: number) => void = () => {}): Pressed | undefined {
    const halves = halvesOf(plan, step, memo);
    if (halves === undefined) return undefined;
    const { pocket, veneer, thickness, film, sanded, sunk, carries, floors = [] } = halves;
    const places = [...floors, ...(veneer.lower ?? [])];
    const shapes = [veneer.standing, pocket.region, ...places.map(({ region }) => region)].map((region) => memo.keyOf(region));
    const more = [floors.length, ...places.map((place) => place.more)];
    const figures = JSON.stringify([film, thickness, sanded, sunk, carries, more, numbersOf(pocket), numbersOf(veneer)]);
    return memo.get('press', `${shapes.join(' ')} ${figures}`, () => virtualPress(halves, tell));
}

/** Every inlay of a plan pressed together, by the index of its step. */
export function pressAll(plan: Plan, memo: Memo): ReadonlyMap<number, Pressed> {
    const all = new Map<number, Pressed>();
    for (const [index, { inlay }] of plan.steps.entries()) {
        const pressed = inlay === undefined ? undefined : planPress(plan, index, memo);
        if (pressed !== undefined) all.set(index, pressed);
    }
    return all;
}

function edgeOf(plan: Plan, laser: LaserPlan, sigma: number, memo: Memo, faceUp = false): HalfEdge | undefined {
    if (laser.step.kind === 'cut') {
        const thickness = laser.depth?.value;
        if (thickness === undefined) return undefined;
        return cutEdge({ thickness, lean: leanOf(laser), tight: tightnessOf(laser), faceUp }, sigma);
    }
    const line = lineOf(laser.outline);
    const deep = laser.wall?.deep;
    const edge = { sigma, ...(line === undefined ? {} : { line }), ...(deep === undefined ? {} : { deep }) };
    if (laser.goesOn !== undefined) return { ...laser.goesOn.whole, ...edge };
    if (laser.settings === undefined) return undefined;
    const { passes } = laser.settings;
    const law = lawOf(plan.recipe, laser, memo);
    return { law, dose: doseOf(laser.settings), passes, ...edge };
}

function numbersOf(edge: HalfEdge): number[] {
    if ('lean' in edge) return [edge.thickness, edge.lean, edge.tight, Number(edge.faceUp), edge.sigma];
    const { law, sigma, dose, passes, line, deep } = edge;
    return [law.threshold, law.energy, law.fade, sigma, dose, passes, line?.dose ?? 0, line?.passes ?? 0, deep ?? 0];
}

function lawOf(recipe: Recipe, laser: LaserPlan, memo: Memo): DepthLaw {
    return depthLaw(recipe, recipe.blanks.find((blank) => blank.name === laser.blank)?.sheet, memo);
}
