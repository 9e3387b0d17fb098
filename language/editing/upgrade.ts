import { AstUtils, CstUtils, GrammarAST, type LangiumDocument } from 'langium';
import { isNewer } from '../edition';
import { renamedIn } from '../vocabulary/editions';
import type { SpanEdit } from './text-edits';

/** The words of a file that are spelled otherwise today, each with the edit that rewrites it. None for a file of a later edition. */
export function upgradeEdits(document: LangiumDocument): SpanEdit[] {
    const root = document.parseResult.value.$cstNode;
    if (root === undefined || isNewer(document)) return [];
    const edits: SpanEdit[] = [];
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
