import { type AstNode, GrammarUtils } from 'langium';
import type { Engrave, Reached } from '../../shared/recipe/step';
import * as ast from '../generated/ast';
import { whereOf } from './places';
import { quantityOf } from './quantity';
import { present } from './stock';

/** How deep an engraving is to be. */
export function depthOf(item: AstNode): Engrave['depth'] {
    if (!ast.isDepth(item)) return undefined;
    if (!item.through) return quantityOf(item.value);
    return { through: true, where: whereOf(item), ...present({ sure: quantityOf(item.sure) }) };
}

/** What cannot be read of it is left out as a whole: the passes belong to the depth. */
export function reachedOf(item: AstNode): Reached | undefined {
    if (!ast.isDepth(item)) return undefined;
    const depth = quantityOf(item.reached);
    const { passes } = item;
    if (depth === undefined || passes === undefined || !Number.isInteger(passes) || passes < 1 || passes > 1000) return undefined;
    const word = GrammarUtils.findNodeForKeyword(item.$cstNode, 'reached');
    const whole = whereOf(item);
    const where =
        word === undefined ? whole : { ...whole, offset: word.offset, length: whole.offset + whole.length - word.offset };
    return { depth, passes, where };
}
