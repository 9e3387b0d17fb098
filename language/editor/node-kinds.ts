import type { AstNode, AstNodeDescription } from 'langium';
import type { NodeKindProvider } from 'langium/lsp';
import { CompletionItemKind, SymbolKind } from 'vscode-languageserver';

const kinds: Readonly<Record<string, SymbolKind>> = {
    Recipe: SymbolKind.Module,
    Routine: SymbolKind.Function,
    Art: SymbolKind.File,
    Blank: SymbolKind.Variable,
    Places: SymbolKind.Array,
    Coupon: SymbolKind.Array,
    Run: SymbolKind.Array,
    Order: SymbolKind.Array,
};
const stock = new Set([
    'Beam',
    'Wood',
    'Abrasive',
    'Board',
    'Veneer',
    'Laser',
    'Resin',
    'Sealer',
    'Glue',
    'Coat',
    'Masking',
    'Shop',
]);

/** The icons of outline and search. Steps are what is done; stock is what is there. */
export class KerfNodeKinds implements NodeKindProvider {
    getSymbolKind({ $type, type }: Partial<AstNode & AstNodeDescription>): SymbolKind {
        const name = $type ?? type ?? '';
        return kinds[name] ?? (stock.has(name) ? SymbolKind.Object : SymbolKind.Event);
    }

    getCompletionItemKind(): CompletionItemKind {
        return CompletionItemKind.Reference;
    }
}
