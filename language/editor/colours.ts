import { AstUtils, GrammarUtils, type LangiumDocument } from 'langium';
import type { Color, ColorInformation, ColorPresentation } from 'vscode-languageserver';
import { isTone } from '../generated/ast';
import { isColour } from '../lowering/items';

/** The colours written in a document, with a swatch beside each. */
export function coloursIn(document: LangiumDocument): ColorInformation[] {
    const found: ColorInformation[] = [];
    for (const node of AstUtils.streamAst(document.parseResult.value)) {
        if (!isTone(node) || !isColour(node.value)) continue;
        const range = GrammarUtils.findNodeForProperty(node.$cstNode, 'value')?.range;
        if (range !== undefined) found.push({ range, color: colourOf(node.value) });
    }
    return found;
}

/** How a picked colour is written: in the form of what stood there, capitals and three digits kept where they can be. */
export function writtenColour({ red, green, blue }: Color, before: string): ColorPresentation[] {
    const pairs = [red, green, blue].map((part) =>
        Math.round(Math.min(1, Math.max(0, part)) * 255)
            .toString(16)
            .padStart(2, '0'),
    );
    const isShort = before.length === 4 && pairs.every(([first, second]) => first === second);
    const hex = `#${pairs.map((pair) => (isShort ? pair[0] : pair)).join('')}`;
    return [{ label: /[A-F]/.test(before) ? hex.toUpperCase() : hex }];
}

function colourOf(hex: string): Color {
    const digits =
        hex.length === 4 ? [...hex.slice(1)].map((digit) => digit + digit) : [hex.slice(1, 3), hex.slice(3, 5), hex.slice(5, 7)];
    const [red = 0, green = 0, blue = 0] = digits.map((pair) => Number.parseInt(pair, 16) / 255);
    return { red, green, blue, alpha: 1 };
}
