import type { AstNode } from 'langium';
import { isBurnt, isCircle, isShape } from '../generated/ast';
import { keyOfNode } from './lookup';

/** The key under which the vocabulary knows a line of a block; undefined for parts and steps of a recipe. */
export function itemKey(item: AstNode): string | undefined {
    const key = (item as { key?: unknown }).key;
    if (typeof key === 'string') return key;
    if (isShape(item)) return isCircle(item.outline) ? 'circle' : 'rectangle';
    return isBurnt(item) ? 'burnt' : keyOfNode.get(item.$type);
}
