import { type AstNode, GrammarUtils, type LangiumDocument } from 'langium';
import type { DocumentSymbolProvider, LangiumServices, NodeKindProvider } from 'langium/lsp';
import type { DocumentSymbol } from 'vscode-languageserver';
import { isArt, isBlank, isFile, isPlaces, isRecipe, isRoutine, isStep } from '../generated/ast';
import { membersOf } from '../variants/members';
import { summaryOf } from './summary';

/** The outline: entries of the file, and in a recipe its parts and steps in the order of the work. */
export class KerfOutline implements DocumentSymbolProvider {
    private readonly kinds: NodeKindProvider;

    constructor(services: LangiumServices) {
        this.kinds = services.shared.lsp.NodeKindProvider;
    }

    getSymbols(document: LangiumDocument): DocumentSymbol[] {
        const file = document.parseResult.value;
        return isFile(file) ? file.entries.flatMap((entry) => this.symbol(entry)) : [];
    }

    private symbol(node: AstNode): DocumentSymbol[] {
        const cst = node.$cstNode;
        if (cst === undefined) return [];
        const parts = isRecipe(node) ? membersOf(node).filter(isShown) : isRoutine(node) ? node.items : [];
        const name = GrammarUtils.findNodeForProperty(cst, 'name');
        const head = headOf(cst.text);
        const kind = name === undefined ? [] : [withoutName(head, name.text)];
        // What the head says already is not said twice.
        const figures = summaryOf(node)
            .split(', ')
            .filter((part) => part !== '' && !head.includes(part));
        const first = GrammarUtils.findNodesForKeyword(cst, cst.text.split(/\s/, 1)[0] ?? '')[0];
        return [
            {
                // A step without a name of its own is called by its first words.
                name: name?.text ?? head,
                detail: [...kind, ...figures].join(', '),
                kind: this.kinds.getSymbolKind(node),
                range: cst.range,
                selectionRange: (name ?? first ?? cst).range,
                children: parts.flatMap((part) => this.symbol(part)),
            },
        ];
    }
}

function isShown(item: AstNode): boolean {
    return isArt(item) || isBlank(item) || isPlaces(item) || isStep(item);
}

/** "engrave on tray" of `engrave pocket on tray`. */
function withoutName(head: string, name: string): string {
    const words = head.split(' ');
    const at = words.indexOf(name, 1);
    return words.filter((_word, index) => index !== at).join(' ');
}

/** The first words of a statement, up to its block: `seal tray with shellac`. */
function headOf(text: string): string {
    const head = text.split(/[{\r\n]/, 1)[0]?.trim() ?? '';
    const short = head.length > 60 ? `${head.slice(0, 59)}…` : head;
    return short === '' ? '…' : short;
}
