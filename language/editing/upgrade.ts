import { AstUtils, CstUtils, GrammarAST, type LangiumDocument } from 'langium';
import { isNewer } from '../edition';
import { isAir, isBacking, isFlag } from '../generated/ast';
import { renamedIn } from '../vocabulary/editions';
import { isLine } from '../vocabulary/lookup';
import type { SpanEdit } from './text-edits';

/** The words of a file that are spelled otherwise today, each with the edit that rewrites it. None for a file of a later edition. */
export function upgradeEdits(document: LangiumDocument): SpanEdit[] {
    const root = document.parseResult.value.$cstNode;
    if (root === undefined || isNewer(document)) return [];
    const edits: SpanEdit[] = [...earlierNos(document)];
    for (const leaf of CstUtils.streamCst(root)) {
        if (!GrammarAST.isKeyword(leaf.grammarSource)) continue;
        const rule = AstUtils.getContainerOfType(leaf.grammarSource, GrammarAST.isParserRule)?.name ?? '';
        const renamed = renamedIn(rule);
        if (renamed !== undefined && leaf.text === renamed.before) {
            edits.push({ offset: leaf.offset, length: leaf.length, text: renamed.now });
        }
    }
    return edits;
}

/** `mirror off`, `air off` and `backing none` are `without` and the word. */
function* earlierNos(document: LangiumDocument): Iterable<SpanEdit> {
    for (const node of AstUtils.streamAst(document.parseResult.value)) {
        const isNo =
            (isFlag(node) && isLine(node, 'mirror') && node.state === 'off') ||
            (isAir(node) && node.state === 'off') ||
            (isBacking(node) && node.kind === 'none');
        const cst = isNo ? node.$cstNode : undefined;
        const [word, said] = cst === undefined ? [] : CstUtils.flattenCst(cst).filter(({ hidden }) => !hidden);
        if (word === undefined || said === undefined) continue;
        // A comment between the two words stays where it is.
        yield { offset: word.offset, length: word.length, text: 'without' };
        yield { offset: said.offset, length: said.length, text: word.text };
    }
}
