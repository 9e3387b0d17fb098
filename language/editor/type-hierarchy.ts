import { type AstNode, AstUtils, CstUtils, GrammarUtils, type LangiumDocument, type LangiumDocuments, URI } from 'langium';
import type { LangiumServices, NodeKindProvider, TypeHierarchyProvider } from 'langium/lsp';
import type {
    TypeHierarchyItem,
    TypeHierarchyPrepareParams,
    TypeHierarchySubtypesParams,
    TypeHierarchySupertypesParams,
} from 'vscode-languageserver';
import { type Entry, isFile, isKind, isRecipe } from '../generated/ast';
import { summaryOf } from './summary';

/** What is based on what: variants on their recipes, and stock on the `kind` from which it takes what it does not say. */
export class KerfTypeHierarchy implements TypeHierarchyProvider {
    private readonly documents: LangiumDocuments;
    private readonly references: LangiumServices['references']['References'];
    private readonly kinds: NodeKindProvider;

    constructor(services: LangiumServices) {
        this.documents = services.shared.workspace.LangiumDocuments;
        this.references = services.references.References;
        this.kinds = services.shared.lsp.NodeKindProvider;
    }

    prepareTypeHierarchy(document: LangiumDocument, { position }: TypeHierarchyPrepareParams): TypeHierarchyItem[] {
        const root = document.parseResult.value.$cstNode;
        const leaf = root && CstUtils.findDeclarationNodeAtOffset(root, document.textDocument.offsetAt(position));
        const meant = leaf === undefined ? [] : this.references.findDeclarations(leaf);
        return meant.flatMap((node) => (isEntry(node) ? this.item(node) : []));
    }

    supertypes({ item }: TypeHierarchySupertypesParams): TypeHierarchyItem[] {
        const base = baseOf(this.entryOf(item));
        return base === undefined ? [] : this.item(base);
    }

    subtypes({ item }: TypeHierarchySubtypesParams): TypeHierarchyItem[] {
        const entry = this.entryOf(item);
        if (entry === undefined) return [];
        return this.documents.all
            .toArray()
            .flatMap(entriesOf)
            .flatMap((each) => (baseOf(each) === entry ? this.item(each) : []));
    }

    private entryOf({ uri, selectionRange: { start } }: TypeHierarchyItem): Entry | undefined {
        const document = this.documents.getDocument(URI.parse(uri));
        const offset = document?.textDocument.offsetAt(start);
        return document && entriesOf(document).find((entry) => nameOf(entry)?.offset === offset);
    }

    private item(entry: Entry): TypeHierarchyItem[] {
        const name = nameOf(entry);
        if (name === undefined || entry.$cstNode === undefined) return [];
        return [
            {
                name: name.text,
                detail: summaryOf(entry),
                kind: this.kinds.getSymbolKind(entry),
                uri: AstUtils.getDocument(entry).uri.toString(),
                range: entry.$cstNode.range,
                selectionRange: name.range,
            },
        ];
    }
}

function entriesOf({ parseResult: { value } }: LangiumDocument): readonly Entry[] {
    return isFile(value) ? value.entries : [];
}

function isEntry(node: AstNode): node is Entry {
    return isFile(node.$container);
}

function nameOf(entry: Entry) {
    return GrammarUtils.findNodeForProperty(entry.$cstNode, 'name');
}

function baseOf(entry: Entry | undefined): Entry | undefined {
    if (entry === undefined) return undefined;
    if (isRecipe(entry)) return entry.base?.ref;
    const items: readonly AstNode[] = 'items' in entry ? entry.items : [];
    return items.find(isKind)?.base?.ref;
}
