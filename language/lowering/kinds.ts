import type { AstNode, Reference } from 'langium';
import * as ast from '../generated/ast';
import { itemKey } from '../vocabulary/item-key';
import { Items } from './items';

/** What can be of a kind: what is bought by mass or volume, and wood. */
type OfKind = ast.Ground | ast.Masking;

/** Follows `kind` from one block to what it is like, nearest first. A circle of kinds ends where it closes. */
export function lineage<T extends OfKind>(node: T, same: (other: AstNode) => other is T): T[] {
    const line: T[] = [];
    for (let next: AstNode | undefined = node; next !== undefined && same(next) && !line.includes(next); ) {
        line.push(next);
        next = kindReference(next)?.ref;
    }
    return line;
}

export function kindReference(node: OfKind): Reference<ast.Stock> | undefined {
    return (node.items as readonly AstNode[]).filter(ast.isKind).find(({ base }) => base !== undefined)?.base;
}

/**
 * Lines of one key hide each other; the price of the pigment is another than that of the resin, and no
 * caution hides another, nor what is said of lying on one thing what is said of another: undefined where a line stands beside all others.
 */
export function foldKey(item: AstNode): string | undefined {
    if (itemKey(item) === 'caution') return undefined;
    if (ast.isOver(item)) return `over ${item.under?.$refText}`;
    const { key, of } = item as { key?: string; of?: string };
    return key ?? `${item.$type} ${of ?? ''}`;
}

/** The lines of a block with those of its kind behind them: the nearest that says something is heard. */
export function folded<Block extends OfKind['$type']>(
    $type: Block,
    line: readonly { items: readonly AstNode[] }[],
): Items<Block> {
    const seen = new Set<string>();
    const items: AstNode[] = [];
    for (const block of line) {
        const here = new Set<string>();
        for (const item of block.items) {
            const key = foldKey(item);
            if (key !== undefined && seen.has(key)) continue;
            if (key !== undefined) here.add(key);
            items.push(item);
        }
        for (const key of here) seen.add(key);
    }
    return new Items({ $type, items });
}
