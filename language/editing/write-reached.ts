import { AstUtils, CstUtils, GrammarUtils, type LangiumDocument } from 'langium';
import { type Message, phrase } from '../../shared/recipe/phrase';
import type { TextChange } from '../../shared/view/protocol';
import * as ast from '../generated/ast';
import { quantityOf } from '../lowering/quantity';
import type { KerfServices } from '../services';

/**
 * Writes behind the depth of an engraving how deep it is after some passes, in the place of what was said of that before.
 *
 * @param offset within the depth that is asked for
 * @param depth as it was typed: a length with its unit
 */
export function writeReached(
    document: LangiumDocument,
    offset: number,
    { depth, passes }: { readonly depth: string; readonly passes: number },
    services: KerfServices,
): { readonly edits: readonly TextChange[] } | { readonly problem: Message } {
    const node = depthAt(document.parseResult.value, offset);
    if (node?.$cstNode === undefined) return { problem: phrase`The depth is not there any more.` };
    const { end } = node.$cstNode;
    const before = GrammarUtils.findNodeForKeyword(node.$cstNode, 'reached');
    const from = before?.offset ?? end;
    const words = `reached ${depth.trim()} after ${passes}`;
    const change = { offset: from, length: end - from, text: before === undefined ? ` ${words}` : words };
    const text = document.textDocument.getText();
    const read = services.parser.LangiumParser.parse(text.slice(0, from) + change.text + text.slice(end));
    const old = document.parseResult;
    const isWorse = read.lexerErrors.length > old.lexerErrors.length || read.parserErrors.length > old.parserErrors.length;
    const written = depthAt(read.value, offset);
    const isRead = quantityOf(written?.reached) !== undefined && written?.passes === passes;
    const isWhole = written?.$cstNode?.end === from + change.text.length;
    if (isWorse || !isRead || !isWhole)
        return { problem: phrase`“${depth.slice(0, 60)}” is no depth: a length is wanted, such as 0.31 mm.` };
    return { edits: [change] };
}

function depthAt(root: Parameters<typeof AstUtils.getDocument>[0], offset: number): ast.Depth | undefined {
    const leaf = root.$cstNode && CstUtils.findLeafNodeAtOffset(root.$cstNode, offset);
    return leaf && AstUtils.getContainerOfType(leaf.astNode, ast.isDepth);
}
