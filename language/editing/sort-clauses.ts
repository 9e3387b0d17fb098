import { AstUtils, type LangiumDocument } from 'langium';
import { clauseOrder, clausesOf } from './line-clauses';

/** A stretch of the text: its clauses as they stand, and the order in which they are laid out. */
export interface UnsortedClauses {
    readonly clauses: readonly { readonly offset: number; readonly end: number }[];
    /** Which of them stands first, second, and so on. */
    readonly order: readonly number[];
}

/** Lines whose clauses stand in another order than laid out, by where they stand. */
export function unsortedClauses(document: LangiumDocument): UnsortedClauses[] {
    const text = document.textDocument.getText();
    const found: UnsortedClauses[] = [];
    for (const node of AstUtils.streamAst(document.parseResult.value)) {
        if (clauseOrder(node) === undefined) continue;
        const { clauses } = clausesOf(node);
        const places = clauses.map(({ parts }) => ({ offset: parts[0]!.offset, end: parts.at(-1)!.end }));
        const first = places[0];
        const last = places.at(-1);
        if (first === undefined || last === undefined) continue;
        const ranks = clauses.map(({ rank }) => rank);
        const isSorted = ranks.every((rank, index) => index === 0 || rank > ranks[index - 1]!);
        // A clause said twice has a finding; behind a comment nobody knows which clause it is about.
        if (isSorted || new Set(ranks).size < ranks.length || /\/\/|\/\*/.test(text.slice(first.offset, last.end))) continue;
        found.push({ clauses: places, order: ranks.map((_, index) => index).sort((a, b) => ranks[a]! - ranks[b]!) });
    }
    return found;
}
