import { type Cut, type CutItem, type Engrave, type EngraveItem, isCount, isFigure } from '../generated/ast';
import { isLine } from '../vocabulary/lookup';

/** The statements of a step that hold settings of the laser, also those that are only half typed. */
export function heldStatements(step: Engrave | Cut): (EngraveItem | CutItem)[] {
    const items: readonly (EngraveItem | CutItem)[] = step.items;
    return items.filter((item) => (isFigure(item) || isCount(item)) && isLine(item, 'power', 'speed', 'pitch', 'passes'));
}
