import { type AstNode, AstUtils, URI } from 'langium';
import type { LangiumServices } from 'langium/lsp';
import type { CompletionItem } from 'vscode-languageserver';
import { describeDeclaration } from './describe-declaration';

/** Where a proposed name is declared, kept with its proposal until somebody looks at it. */
interface Declared {
    readonly uri: string;
    readonly path: string;
}

export function declaredAt(node: AstNode, services: LangiumServices): Declared {
    const path = services.workspace.AstNodeLocator.getAstNodePath(node);
    return { uri: AstUtils.getDocument(node).uri.toString(), path };
}

/** The proposal with what its name stands for. As it was if that is gone or if it is no name. */
export function resolveProposal(item: CompletionItem, services: LangiumServices): CompletionItem {
    const { uri, path } = (item.data ?? {}) as Partial<Declared>;
    if (typeof uri !== 'string' || typeof path !== 'string') return item;
    const root = services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri))?.parseResult.value;
    const node = root && services.workspace.AstNodeLocator.getAstNode(root, path);
    return node === undefined ? item : { ...item, documentation: { kind: 'markdown', value: describeDeclaration(node) } };
}
