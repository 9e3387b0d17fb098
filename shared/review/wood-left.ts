import type { Plan, StepPlan } from '../plan/plan';
import type { Wall } from '../rules/helpers/walls';
import { besideOf, floorLeft, freedParts, thinnestWalls } from '../rules/helpers/what-is-left';
import { type Figure, range, worked } from './figure';

/** What wood a burn leaves, and what it frees. */
export function woodLeft(step: StepPlan, plan: Plan): Figure[] {
    const { blank = '', step: written } = step;
    const floor = floorLeft(plan, step);
    const wall = thinnestWalls(plan, blank).get(written.index);
    const freed = freedParts(plan, blank, written.index).length - freedParts(plan, blank, written.index - 1).length;
    return [
        ...(floor === undefined ? [] : [range('floor left', floor)]),
        ...(wall === undefined ? [] : [wallFigure(wall)]),
        ...(written.kind === 'cut' && freed > 0 ? [worked('cut free', freed, 'count')] : []),
    ];
}

function wallFigure(wall: Wall): Figure {
    const figure = worked('thinnest wall', wall.distance, 'length');
    const text = `${figure.text} to ${besideOf(wall)}`;
    return { ...figure, text, key: text };
}
