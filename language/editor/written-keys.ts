import type { AstNode } from 'langium';
import { itemKey } from '../vocabulary/item-key';

/** Keys of the lines that a block of that type around a node has, but for the one that `offset` is in. */
export function writtenKeys(node: AstNode | undefined, block: string, offset: number): ReadonlySet<string> {
    const keys = new Set<string>();
    let holder = node;
    while (holder !== undefined && !(holder.$type === block && covers(holder, offset))) holder = holder.$container;
    for (const item of (holder as { items?: readonly AstNode[] } | undefined)?.items ?? []) {
        const key = itemKey(item);
        const { offset: start = 0, end = 0 } = item.$cstNode ?? {};
        const isHere = start <= offset && offset < end;
        if (key !== undefined && !isHere) keys.add(key);
    }
    return keys;
}

function covers({ $cstNode }: AstNode, offset: number): boolean {
    return $cstNode !== undefined && $cstNode.offset <= offset && offset <= $cstNode.end;
}
