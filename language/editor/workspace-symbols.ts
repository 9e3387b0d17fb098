import { type AstNode, GrammarUtils, type LangiumDocument, type LangiumDocuments } from 'langium';
import type { FuzzyMatcher, LangiumSharedServices, NodeKindProvider, WorkspaceSymbolProvider } from 'langium/lsp';
import type { CancellationToken, WorkspaceSymbol, WorkspaceSymbolParams } from 'vscode-languageserver';
import { isBuiltIn } from '../built-in';
import { isFile, isRecipe } from '../generated/ast';
import { membersOf } from '../variants/members';

/** Nobody reads through more; the next letter narrows it down. */
const most = 400;

/**
 * Finds by name what the workspace declares: stock, recipes, and their art, blanks and named steps. Letters need only come in
 * order, as the protocol has it, since the editor sorts; what begins with them, or has a word that does, comes first all the same.
 * Built-in stock is among it, last and marked as such, since its figures and their sources are worth
 * looking up, and most recipes name it without ever opening it.
 */
export class KerfWorkspaceSymbols implements WorkspaceSymbolProvider {
    private readonly documents: LangiumDocuments;
    private readonly matcher: FuzzyMatcher;
    private readonly kinds: NodeKindProvider;

    constructor(services: LangiumSharedServices) {
        this.documents = services.workspace.LangiumDocuments;
        this.matcher = services.lsp.FuzzyMatcher;
        this.kinds = services.lsp.NodeKindProvider;
    }

    getSymbols({ query }: WorkspaceSymbolParams, token?: CancellationToken): WorkspaceSymbol[] {
        const asked = query.toLowerCase().replaceAll(/\s/g, '');
        const found: WorkspaceSymbol[] = [];
        const further: WorkspaceSymbol[] = [];
        const all = this.documents.all.toArray();
        const own = all.filter(({ uri }) => !isBuiltIn(uri.toString()));
        for (const document of [...own, ...all.filter((each) => !own.includes(each))]) {
            if (token?.isCancellationRequested || found.length >= most) break;
            for (const symbol of this.symbolsOf(document, asked)) {
                if (this.matcher.match(asked, symbol.name)) found.push(symbol);
                else if (further.length < most) further.push(symbol);
            }
        }
        return [...found, ...further].slice(0, most);
    }

    private *symbolsOf(document: LangiumDocument, query: string): Iterable<WorkspaceSymbol> {
        const file = document.parseResult.value;
        const container = isBuiltIn(document.uri.toString()) ? 'built-in stock' : undefined;
        for (const entry of isFile(file) ? file.entries : []) {
            yield* this.symbol(entry, document, query, container);
            if (!isRecipe(entry)) continue;
            for (const item of membersOf(entry)) yield* this.symbol(item, document, query, entry.name);
        }
    }

    private *symbol(
        node: AstNode & { name?: string },
        document: LangiumDocument,
        query: string,
        containerName: string | undefined,
    ): Iterable<WorkspaceSymbol> {
        const range = GrammarUtils.findNodeForProperty(node.$cstNode, 'name')?.range;
        if (range === undefined || !node.name || !isInOrder(query, node.name.toLowerCase())) return;
        const location = { uri: document.uri.toString(), range };
        yield { name: node.name, kind: this.kinds.getSymbolKind(node), location, ...(containerName && { containerName }) };
    }
}

/** Whether the letters come in this order, with any others between them. */
function isInOrder(letters: string, name: string): boolean {
    let at = 0;
    for (const letter of letters) {
        at = name.indexOf(letter, at) + letter.length;
        if (at < letter.length) return false;
    }
    return true;
}
