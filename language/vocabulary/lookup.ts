import type { AstNode } from 'langium';
import { isExtent, isFigure, type Position, type Quantity, type Size } from '../generated/ast';
import { partProperties } from './part-properties';
import type { NodeType, Property, Takes } from './property';
import { recipeProperties } from './recipe-properties';
import { burntParts, orderProperties, runProperties, wantedParts } from './run-properties';
import { stockProperties } from './stock-properties';

const table = [...stockProperties, ...recipeProperties, ...runProperties, ...orderProperties];
const lines: readonly Property[] = table;
const parts: readonly Property[] = [...partProperties, ...burntParts, ...wantedParts];

type Line = (typeof table)[number];
type LineOf<Block, How> = Line extends infer Each
    ? Each extends { readonly block: infer Home; readonly takes: How }
        ? Block & Home extends never
            ? never
            : Each
        : never
    : never;

/** The keys of the lines that a block can have, of those only that are written in a certain way where `How` says so. */
export type KeyOf<Block extends NodeType = NodeType, How extends Takes = Takes> = LineOf<Block, How>['key'];

/** The words among which such a line chooses. */
export type ChoiceOf<Block extends NodeType, Key extends string> = Extract<
    LineOf<Block, Takes>,
    { readonly key: Key }
>['choices'][number];

const byBlock = new Map<string, Property[]>();
const byKey = new Map<string, Property>();
for (const each of lines) {
    const block = byBlock.get(each.block);
    if (block === undefined) byBlock.set(each.block, [each]);
    else block.push(each);
}
for (const each of [...lines, ...parts]) byKey.set(`${each.block}.${each.key}`, each);

/** The lines that can stand in a block of that kind, in the order in which they are offered. */
export function propertiesOf(block: string): readonly Property[] {
    return byBlock.get(block) ?? [];
}

/** The property or the part of a line whose words were just written, seen from the innermost open statement. */
export function propertyAfter(word: string, open: readonly string[]): Property | undefined {
    for (const block of open.toReversed()) {
        const found = parts.find((part) => part.block === block && part.words === word);
        if (found !== undefined) return found;
        const own = propertiesOf(block).find(({ words }) => words === word || words.endsWith(` ${word}`));
        if (own !== undefined) return own;
    }
    return undefined;
}

export function propertyOf(block: string, key: string): Property | undefined {
    return byKey.get(`${block}.${key}`);
}

/** What the numbers of this node stand for, wherever it hangs in the tree. */
export function propertyOfNumber(node: Quantity | Size | Position): Property | undefined {
    const holder: AstNode | undefined = node.$container;
    if (holder === undefined) return undefined;
    if (isFigure(holder) || isExtent(holder)) return propertyOf(holder.$container.$type, holder.key);
    return propertyOf(holder.$type, node.$containerProperty ?? '');
}

/** Whether a node of the tree is a line of that key; a key that no block has does not compile. */
export function isLine<Node extends { readonly key: string }, Key extends KeyOf>(
    node: Node,
    ...keys: readonly Key[]
): node is Node & { readonly key: Key } {
    return (keys as readonly string[]).includes(node.key);
}

/** Every line of the language by the node that it becomes, for those nodes that do not bear a key. */
export const keyOfNode: ReadonlyMap<string, string> = new Map(
    lines.flatMap(({ node, key }) => (node === undefined ? [] : [[node, key] as const])),
);

/** All lines of all blocks. */
export const allLines: readonly Property[] = lines;
/** The numbers inside lines. */
export const allParts: readonly Property[] = parts;
