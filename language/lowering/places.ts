import { type AstNode, AstUtils, type CstNode, GrammarAST, GrammarUtils, isCompositeCstNode, type Reference } from 'langium';
import { nowhere, type Where, type Written } from '../../shared/quantity/where';
import { isBuiltIn } from '../built-in';
import { gradeAt } from './known';

function uriOf(node: AstNode): string {
    return AstUtils.findRootNode(node).$document?.uri.toString() ?? '';
}

/** Where a syntax node stands in the text. */
export function whereOf(node: AstNode | undefined): Where {
    return node === undefined ? nowhere : whereOfCst(node, node.$cstNode);
}

/** Where a part of a node stands, such as its name or its unit; the node itself where the part is missing. */
export function whereOfPart(node: AstNode, part: string, index?: number): Where {
    const { $cstNode: whole } = node;
    const found =
        index === undefined ? partIn(whole, part, whole?.astNode) : GrammarUtils.findNodeForProperty(whole, part, index);
    return whereOfCst(node, found ?? whole);
}

/** The first syntax that gave a part of a node: Langium finds them all, and asks the grammar anew of each word. */
function partIn(cst: CstNode | undefined, part: string, owner: AstNode | undefined): CstNode | undefined {
    if (cst === undefined || !isCompositeCstNode(cst) || cst.astNode !== owner) return undefined;
    for (const child of cst.content) {
        const found = partOf(child.grammarSource) === part ? child : partIn(child, part, owner);
        if (found !== undefined) return found;
    }
    return undefined;
}

type Source = NonNullable<CstNode['grammarSource']>;
/** Which part each element of the grammar gives; the grammar stays. */
const parts = new Map<Source, string | undefined>();

function partOf(source: Source | undefined): string | undefined {
    if (source === undefined) return undefined;
    if (!parts.has(source)) parts.set(source, AstUtils.getContainerOfType(source, GrammarAST.isAssignment)?.feature);
    return parts.get(source);
}

/** Where the first word of a node stands: the narrowest place that stands for a statement. */
export function whereOfFirstWord(node: AstNode): Where {
    const cst = node.$cstNode;
    if (cst === undefined) return nowhere;
    const word = /^[\w-]+/.exec(cst.text)?.[0] ?? cst.text.slice(0, 1);
    return { uri: uriOf(node), offset: cst.offset, length: Math.max(1, word.length) };
}

export function whereOfCst(node: AstNode, cst: CstNode | undefined): Where {
    if (cst === undefined) return nowhere;
    const uri = uriOf(node);
    const grade = isBuiltIn(uri) ? gradeAt(uri, cst.range.start.line) : undefined;
    return { uri, offset: cst.offset, length: cst.length, ...(grade === undefined ? {} : { grade }) };
}

/** Where a reference stands, whichever file the block that it counts for stands in. */
export function whereOfReference({ $refNode }: Reference): Where | undefined {
    return $refNode === undefined ? undefined : whereOfCst($refNode.astNode, $refNode);
}

export function written<T>(value: T, where: Where): Written<T> {
    return { value, where };
}
