import { AstUtils, type LangiumDocument } from 'langium';
import type { Gap } from './format-text';
import { clauseOrder, clausesOf } from './line-clauses';

/** Lines whose clauses stand in another order than laid out: the same words in that order, blanks laid out as `gaps` say. */
export function sortedClauses(document: LangiumDocument, gaps: readonly Gap[]): Gap[] {
    const text = document.textDocument.getText();
    const sorted: Gap[] = [];
    for (const node of AstUtils.streamAst(document.parseResult.value)) {
        if (clauseOrder(node) === undefined) continue;
        const pieces = clausesOf(node).clauses.map(({ rank, parts }) => ({
            rank,
            offset: parts[0]!.offset,
            end: parts.at(-1)!.end,
        }));
        const first = pieces[0];
        const last = pieces.at(-1);
        if (first === undefined || last === undefined) continue;
        const ranks = pieces.map(({ rank }) => rank);
        const isSorted = ranks.every((rank, index) => index === 0 || rank > ranks[index - 1]!);
        // A clause said twice has a finding; behind a comment nobody knows which clause it is about.
        if (isSorted || new Set(ranks).size < ranks.length || /\/\/|\/\*/.test(text.slice(first.offset, last.end))) continue;
        const laidOut = (from: number, to: number) => withGaps(text, from, to, gaps);
        const between = pieces.slice(1).map((piece, index) => laidOut(pieces[index]!.end, piece.offset));
        const words = [...pieces].sort((a, b) => a.rank - b.rank).map(({ offset, end }) => laidOut(offset, end));
        sorted.push({
            offset: first.offset,
            length: last.end - first.offset,
            blanks: words.map((each, index) => `${index === 0 ? '' : between[index - 1]}${each}`).join(''),
        });
    }
    return sorted;
}

/** A stretch of the text with the gaps that lie in it. */
function withGaps(text: string, from: number, to: number, gaps: readonly Gap[]): string {
    let out = '';
    let at = from;
    for (const { offset, length, blanks } of gaps) {
        if (offset < from || offset + length > to) continue;
        out += text.slice(at, offset) + blanks;
        at = offset + length;
    }
    return out + text.slice(at, to);
}
