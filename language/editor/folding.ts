import { type AstNode, CstUtils, type LangiumDocument } from 'langium';
import { DefaultFoldingRangeProvider, type FoldingRangeAcceptor } from 'langium/lsp';
import { FoldingRangeKind } from 'vscode-languageserver';

/** Blocks and long comments; lines of `//` below each other are one comment. */
export class KerfFolding extends DefaultFoldingRangeProvider {
    protected override collectCommentFolding(document: LangiumDocument, node: AstNode, acceptor: FoldingRangeAcceptor): void {
        super.collectCommentFolding(document, node, acceptor);
        if (node.$cstNode === undefined) return;
        let first = Number.NaN; // no line yet, and none behind it
        let last = Number.NaN;
        const close = (): void => {
            if (last > first) acceptor({ startLine: first, endLine: last, kind: FoldingRangeKind.Comment });
        };
        for (const leaf of CstUtils.flattenCst(node.$cstNode)) {
            if (leaf.tokenType.name !== 'COMMENT' || !standsAlone(document, leaf.offset)) continue;
            const { line } = leaf.range.start;
            if (line !== last + 1) {
                close();
                first = line;
            }
            last = line;
        }
        close();
    }
}

function standsAlone(document: LangiumDocument, offset: number): boolean {
    const text = document.textDocument.getText();
    return text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset).trim() === '';
}
