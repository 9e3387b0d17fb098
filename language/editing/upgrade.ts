import { AstUtils, CstUtils, GrammarAST, type LangiumDocument } from 'langium';
import { isNewer } from '../edition';
import { isAir, isBacking, isFlag } from '../generated/ast';
import { renamedIn } from '../vocabulary/editions';
import { isLine } from '../vocabulary/lookup';
import type { SpanEdit } from './text-edits';

/**
 * The words of a file that are spelled otherwise today, each with the edit that rewrites it, in the order of the text. None for a file
 * of a later edition.
 */
export function upgradeEdits(document: LangiumDocument): SpanEdit[] {
    const root = document.parseResult.value.$cstNode;
    if (root === undefined || isNewer(document)) return [];
    const edits: SpanEdit[] = [...earlierFormsIn(document)];
    for (const leaf of CstUtils.streamCst(root)) {
        if (!GrammarAST.isKeyword(leaf.grammarSource)) continue;
        const rule = AstUtils.getContainerOfType(leaf.grammarSource, GrammarAST.isParserRule)?.name ?? '';
        const renamed = renamedIn(rule);
        if (renamed !== undefined && leaf.text === renamed.before) {
            edits.push({ offset: leaf.offset, length: leaf.length, text: renamed.now });
        }
    }
    return edits.sort((a, b) => a.offset - b.offset);
}

/** `mirror off`, `air off` and `backing none` are `without` and the word, `mirror on` is the word alone. */
function* earlierFormsIn(document: LangiumDocument): Iterable<SpanEdit> {
    for (const node of AstUtils.streamAst(document.parseResult.value)) {
        const isYes = isFlag(node) && isLine(node, 'mirror') && node.state === 'on';
        const isNo =
            (isFlag(node) && isLine(node, 'mirror') && node.state === 'off') ||
            (isAir(node) && node.state === 'off') ||
            (isBacking(node) && node.kind === 'none');
        const cst = isNo || isYes ? node.$cstNode : undefined;
        const [word, said] = cst === undefined ? [] : CstUtils.flattenCst(cst).filter(({ hidden }) => !hidden);
        if (word === undefined || said === undefined) continue;
        if (document.textDocument.getText().slice(word.end, said.offset).trim() === '') {
            const text = isYes ? word.text : `without ${word.text}`;
            yield { offset: word.offset, length: said.end - word.offset, text };
        } else if (isYes) {
            yield { offset: said.offset, length: said.length, text: '' };
        } else {
            // A comment between the two words stays where it is.
            yield { offset: word.offset, length: word.length, text: 'without' };
            yield { offset: said.offset, length: said.length, text: word.text };
        }
    }
}
