import { type AstNode, AstUtils, type LangiumDocument, type Reference } from 'langium';
import { AbstractSemanticTokenProvider, type SemanticTokenAcceptor } from 'langium/lsp';
import {
    type CancellationToken,
    SemanticTokenModifiers,
    type SemanticTokens,
    type SemanticTokensParams,
    type SemanticTokensRangeParams,
    SemanticTokenTypes,
} from 'vscode-languageserver';
import { isBuiltIn } from '../built-in';
import * as ast from '../generated/ast';

/** Colours names by what they stand for, which the text alone cannot tell: stock, parts of the recipe, steps. */
export class KerfSemanticTokens extends AbstractSemanticTokenProvider {
    private last: Promise<unknown> = Promise.resolve();

    override semanticHighlight(
        document: LangiumDocument,
        params: SemanticTokensParams,
        token?: CancellationToken,
    ): Promise<SemanticTokens> {
        return this.inTurn(() => super.semanticHighlight(document, params, token));
    }

    override semanticHighlightRange(
        document: LangiumDocument,
        params: SemanticTokensRangeParams,
        token?: CancellationToken,
    ): Promise<SemanticTokens> {
        return this.inTurn(() => super.semanticHighlightRange(document, params, token));
    }

    /** The provider holds the file that it is at, so a second one that is begun meanwhile would be mixed into the first. */
    private inTurn<T>(work: () => Promise<T>): Promise<T> {
        const mine = this.last.then(work);
        this.last = mine.catch(() => undefined);
        return mine;
    }

    protected override highlightElement(node: AstNode, acceptor: SemanticTokenAcceptor): void {
        const named = node as { name?: unknown };
        if (typeof named.name === 'string') {
            acceptor({ node, property: 'name', type: typeOf(node), modifier: SemanticTokenModifiers.declaration } as never);
        }
        if (ast.isAllow(node)) acceptor({ node, property: 'rule', type: SemanticTokenTypes.decorator });
        for (const { reference, property, index } of AstUtils.streamReferences(node)) {
            const target = (reference as Reference).ref;
            if (target === undefined) continue;
            const builtIn = isBuiltIn(AstUtils.getDocument(target).uri.toString());
            const modifier = builtIn ? SemanticTokenModifiers.defaultLibrary : undefined;
            acceptor({ node, property, index, type: typeOf(target), modifier } as never);
        }
    }
}

function typeOf(node: AstNode): SemanticTokenTypes {
    if (ast.isStep(node) || ast.isRoutine(node)) return SemanticTokenTypes.function;
    if (ast.isRecipe(node)) return SemanticTokenTypes.namespace;
    if (ast.isArt(node) || ast.isBlank(node) || ast.isPlaces(node)) return SemanticTokenTypes.variable;
    return SemanticTokenTypes.type;
}
