import { type AstNode, isAstNode, isReference, type ReferenceInfo } from 'langium';
import { KeptOn } from '../../shared/plan/kept';

/** A parsed tree laid out flat. */
export interface Tree {
    /** All nodes, each before those inside it, in the order of the text. */
    readonly nodes: readonly AstNode[];
    /** All names that stand for something declared elsewhere. */
    readonly references: readonly ReferenceInfo[];
}

const trees = new KeptOn<AstNode, Tree>();

/** Everything under a root, walked through once: a tree never changes after it was parsed. */
export function treeOf(root: AstNode): Tree {
    let tree = trees.get(root);
    if (tree === undefined) {
        const nodes: AstNode[] = [];
        const references: ReferenceInfo[] = [];
        walk(root, nodes, references);
        tree = { nodes, references };
        trees.set(root, tree);
    }
    return tree;
}

function walk(node: AstNode, nodes: AstNode[], references: ReferenceInfo[]): void {
    nodes.push(node);
    for (const property of Object.keys(node)) {
        if (property.startsWith('$')) continue;
        const value: unknown = (node as unknown as Record<string, unknown>)[property];
        if (Array.isArray(value)) {
            for (let index = 0; index < value.length; index++) {
                const element: unknown = value[index];
                if (isAstNode(element)) walk(element, nodes, references);
                else if (isReference(element)) references.push({ reference: element, container: node, property, index });
            }
        } else if (isAstNode(value)) walk(value, nodes, references);
        else if (isReference(value)) references.push({ reference: value, container: node, property });
    }
}
