import { type AstNode, AstUtils, CstUtils, GrammarUtils, isReference, type LangiumDocument } from 'langium';
import type { LinkedEditingRanges, Position } from 'vscode-languageserver';
import { isArt, isBlank, isPlaces, isRecipe, isRoutine, isStep, KerfTerminals } from '../generated/ast';

/**
 * Where the name under the cursor stands, if it is one that a recipe gives to its own art, blanks and steps: what is typed
 * at one place is typed at all. Names of stock may stand in other files; those are renamed, not linked.
 */
export function linkedRanges(document: LangiumDocument, position: Position): LinkedEditingRanges | undefined {
    const root = document.parseResult.value.$cstNode;
    const offset = document.textDocument.offsetAt(position);
    const leaf = root && (wordAt(CstUtils.findLeafNodeAtOffset(root, offset)) ?? CstUtils.findLeafNodeBeforeOffset(root, offset));
    if (leaf === undefined || leaf.end < offset) return undefined;
    const references = document.references.filter((each) => isReference(each));
    const declared = references.find(({ $refNode }) => $refNode?.offset === leaf.offset)?.ref ?? leaf.astNode;
    const name = isLocal(declared) ? GrammarUtils.findNodeForProperty(declared.$cstNode, 'name') : undefined;
    if (name === undefined || AstUtils.getDocument(declared) !== document) return undefined;
    const uses = references.flatMap(({ ref, $refNode }) => ($refNode !== undefined && ref === declared ? [$refNode] : []));
    const places = [name, ...uses].filter(({ text }) => text === name.text);
    if (!places.some((place) => place.offset === leaf.offset)) return undefined;
    return { ranges: places.map(({ range }) => range), wordPattern: KerfTerminals.ID.source };
}

function wordAt<T extends { readonly text: string; readonly hidden: boolean }>(leaf: T | undefined): T | undefined {
    return leaf !== undefined && !leaf.hidden && /^[\p{L}_]/u.test(leaf.text) ? leaf : undefined;
}

function isLocal(node: AstNode): boolean {
    return (
        (isArt(node) || isBlank(node) || isPlaces(node) || isStep(node)) &&
        (isRecipe(node.$container) || isRoutine(node.$container))
    );
}
