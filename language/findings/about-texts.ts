import type { LangiumDocument } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import * as ast from '../generated/ast';
import { aboutLine } from '../lowering/about';
import { treeOf } from '../names/tree';
import type { KerfLexer } from '../parsing/lexer';
import type { KerfServices } from '../services';
import { replaceWith, say } from './say';

/** `///` where nobody would read it: above a line of a block, at the end of one, or behind something on its line. */
export function* strayTexts(document: LangiumDocument, services: KerfServices): Iterable<Finding> {
    const text = document.textDocument.getText();
    if (!text.includes('///')) return;
    const uri = document.uri.toString();
    const readers = new Set<number>();
    for (const node of treeOf(document.parseResult.value).nodes) {
        if (isRead(node) && node.$cstNode !== undefined) readers.add(node.$cstNode.range.start.line);
    }
    const lines = text.split('\n').map((line) => line.trim());
    /** Whether all comments from a line on stand right above something that they are read with. */
    const isReadWith = (line: number): boolean => {
        let below = line;
        while (lines[below]?.startsWith('//')) below++;
        return below > line && readers.has(below);
    };
    // Most texts have no other, and need not be taken apart into words once more.
    if (!/\r(?!\n)/.test(text) && lines.every((line, at) => !line.includes('///') || isReadWith(at))) return;
    for (const { image, startOffset: offset } of (services.parser.Lexer as KerfLexer).written(text)) {
        if (aboutLine(image.trim()) === undefined) continue;
        const { line } = document.textDocument.positionAt(offset);
        if (isReadWith(line)) continue;
        const where = { uri, offset, length: 3 };
        yield say('stray-text', {
            severity: 'hint',
            message: phrase`A text behind \`///\` is shown to others right above a recipe, a part or step of one, or stock; here to nobody.`,
            where,
            fixes: [replaceWith(where, '//', phrase`Keep it as a note of your own (\`//\`)`, true)],
        });
    }
}

/** What such a text can be about. */
function isRead(node: { readonly $type: string }): boolean {
    return (
        ast.isStock(node) ||
        ast.isShop(node) ||
        ast.isRoutine(node) ||
        ast.isRecipe(node) ||
        ast.isArt(node) ||
        ast.isBlank(node) ||
        ast.isPlaces(node) ||
        ast.isStep(node)
    );
}
