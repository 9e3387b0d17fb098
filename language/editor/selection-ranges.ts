import { type CstNode, CstUtils, type LangiumDocument } from 'langium';
import type { Position, Range, SelectionRange } from 'vscode-languageserver';

/** For each position the spans that widen step by step: word, number, line, block, entry, file. */
export function selectionRanges(document: LangiumDocument, positions: readonly Position[]): SelectionRange[] {
    return positions.map((position) => selectionRange(document, position));
}

function selectionRange(document: LangiumDocument, position: Position): SelectionRange {
    const text = document.textDocument;
    const whole: Range = { start: { line: 0, character: 0 }, end: text.positionAt(text.getText().length) };
    const root = document.parseResult.value.$cstNode;
    const offset = text.offsetAt(position);
    const leaf = root && (CstUtils.findLeafNodeAtOffset(root, offset) ?? CstUtils.findLeafNodeBeforeOffset(root, offset));
    const spans: [number, number][] = [];
    for (let node: CstNode | undefined = leaf; node !== undefined; node = node.container) {
        const [start, end] = spans.at(-1) ?? [offset, offset];
        const isWider = node.offset <= start && node.end >= end && (node.offset < start || node.end > end);
        if (isWider) spans.push([node.offset, node.end]);
    }
    let widest: SelectionRange = { range: whole };
    for (const [start, end] of spans.reverse()) {
        if (start === 0 && end === text.getText().length) continue;
        widest = { range: { start: text.positionAt(start), end: text.positionAt(end) }, parent: widest };
    }
    return widest;
}
