import { type AstNode, CstUtils, type LangiumDocument } from 'langium';
import { type Message, phrase } from '../../shared/recipe/phrase';
import type { TextChange } from '../../shared/view/protocol';
import * as ast from '../generated/ast';
import { extentOf, pointOf, quantityOf } from '../lowering/quantity';
import type { KerfServices } from '../services';

const longest = 60;

export type Rewriting = { readonly edits: readonly TextChange[] } | { readonly problem: Message };

/**
 * Puts a typed number in the place of one that is written, or a place for art that has none yet:
 * `offset` and `length` are those of the number, or of the whole `art` line. Nothing is written
 * that the language would not read, at that place, as a number of the same kind.
 */
export function rewriteNumber(
    document: LangiumDocument,
    { offset, length }: { readonly offset: number; readonly length: number },
    typed: string,
    services: KerfServices,
): Rewriting {
    const text = typed.trim();
    if (text === '' || text.length > longest || /[{}\r\n"#]|\/[/*]/.test(text))
        return { problem: phrase`“${text.slice(0, longest)}” is not a number.` };
    const node = nodeAt(document.parseResult.value, offset, length);
    if (node === undefined) return { problem: phrase`The number is not there any more.` };
    const change = ast.isArtUse(node) ? placing(node, text) : { offset, length, text };
    if (change === undefined) return { problem: phrase`The art has no line of its own.` };
    const before = document.textDocument.getText();
    const after = before.slice(0, change.offset) + change.text + before.slice(change.offset + change.length);
    const read = services.parser.LangiumParser.parse(after);
    const old = document.parseResult;
    const worse = read.lexerErrors.length > old.lexerErrors.length || read.parserErrors.length > old.parserErrors.length;
    const start = change.offset + change.text.length - text.length;
    const fresh = worse ? undefined : nodeAt(read.value, start, text.length);
    const kind = ast.isArtUse(node) ? ast.Position.$type : node.$type;
    return fresh !== undefined && fresh.$type === kind && isReadable(fresh)
        ? { edits: [change] }
        : { problem: phrase`“${text}” cannot be written here: ${wanted(kind)}.` };
}

/** The number, or the `art` line, that stands exactly there. */
function nodeAt(root: AstNode, offset: number, length: number): AstNode | undefined {
    const leaf = root.$cstNode && CstUtils.findLeafNodeAtOffset(root.$cstNode, offset);
    for (let node: AstNode | undefined = leaf?.astNode; node !== undefined; node = node.$container) {
        const known = ast.isQuantity(node) || ast.isSize(node) || ast.isPosition(node) || ast.isArtUse(node);
        if (known && node.$cstNode?.offset === offset && node.$cstNode.length === length) return node;
    }
    return undefined;
}

function placing(node: ast.ArtUse, text: string): TextChange | undefined {
    if (node.at?.$cstNode !== undefined) return { offset: node.at.$cstNode.offset, length: node.at.$cstNode.length, text };
    if (node.$cstNode === undefined) return undefined;
    // `turned` comes after the place.
    const turned = /\s+turned\b/.exec(node.$cstNode.text);
    const end = node.$cstNode.offset + (turned?.index ?? node.$cstNode.length);
    return { offset: end, length: 0, text: ` at ${text}` };
}

function isReadable(node: AstNode): boolean {
    if (ast.isQuantity(node)) return quantityOf(node) !== undefined;
    if (ast.isSize(node)) return extentOf(node) !== undefined;
    return ast.isPosition(node) && pointOf(node) !== undefined;
}

function wanted(kind: string): string {
    if (kind === ast.Size.$type) return 'two lengths are wanted, such as 300 x 200 mm';
    if (kind === ast.Position.$type) return 'a place is wanted, such as 150, 100 mm';
    return 'a number with a unit that fits is wanted';
}
