import type { Found } from '../../shared/recipe/step';
import * as ast from '../generated/ast';
import { Items } from './items';
import { refOf } from './placement';
import { whereOf } from './places';
import { quantityOf } from './quantity';
import { present } from './stock';

/** The first line that says one of the ways that there are. */
export function foundOf(node: ast.Flip | ast.Do): Found | undefined {
    const by = node.$type === 'Flip' ? new Items(node).choice('foundby') : new Items(node).choice('foundby');
    const line = node.items.find((item) => ast.isFound(item) && item.value === by?.value);
    if (by === undefined || !ast.isFound(line)) return undefined;
    const of = line.mark === undefined ? undefined : refOf(line.mark, by.where);
    return { by: by.value, where: whereOf(line), ...present({ of, within: quantityOf(line.exact) }) };
}
