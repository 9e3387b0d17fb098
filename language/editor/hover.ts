import { type AstNode, CstUtils, GrammarAST, type LangiumDocument } from 'langium';
import { AstNodeHoverProvider, type LangiumServices } from 'langium/lsp';
import type { Hover, HoverParams } from 'vscode-languageserver';
import { couponHover } from '../coupon/coupon-hover';
import { isAmount, isPosition, isQuantity, isSize, type Position, type Quantity, type Size } from '../generated/ast';
import { describeDeclaration } from './describe-declaration';
import { describeNumber } from './describe-number';
import { describeWord } from './describe-word';

/** Says what lies under the cursor: a name by what it stands for, a number in other units, a word by what it does. */
export class KerfHover extends AstNodeHoverProvider {
    constructor(services: LangiumServices) {
        super(services);
    }

    override async getHoverContent(document: LangiumDocument, params: HoverParams): Promise<Hover | undefined> {
        const root = document.parseResult.value.$cstNode;
        if (root === undefined) return undefined;
        const offset = document.textDocument.offsetAt(params.position);
        const leaf = CstUtils.findLeafNodeAtOffset(root, offset);
        if (leaf === undefined || leaf.hidden) return undefined;
        const range = { start: document.textDocument.positionAt(leaf.offset), end: document.textDocument.positionAt(leaf.end) };
        const declarations = this.references.findDeclarations(leaf);
        const said =
            declarations.length > 0
                ? declarations.map(describeDeclaration).join('\n\n')
                : GrammarAST.isKeyword(leaf.grammarSource)
                  ? describeWord(leaf.text, leaf.astNode)
                  : describeMeasured(leaf.astNode);
        const parts = [said, couponHover(leaf.astNode)].filter((part) => part !== undefined && part !== '');
        return parts.length === 0 ? undefined : { contents: { kind: 'markdown', value: parts.join('\n\n') }, range };
    }

    protected override getAstNodeHoverContent(node: AstNode): string {
        return describeDeclaration(node);
    }
}

function describeMeasured(node: AstNode): string | undefined {
    const measured = isAmount(node) ? node.$container : node;
    return isMeasured(measured) ? describeNumber(measured) : undefined;
}

function isMeasured(node: AstNode | undefined): node is Quantity | Size | Position {
    return isQuantity(node) || isSize(node) || isPosition(node);
}
