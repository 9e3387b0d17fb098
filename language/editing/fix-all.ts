import { type CodeAction, CodeActionKind, type TextEdit } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { phrase } from '../../shared/recipe/phrase';

/**
 * The preferred fixes of one file in one step. Of two that would change the same words only the first is made;
 * a fix that reaches into another file is left to somebody who looks at it.
 */
export function fixAll(fixes: readonly CodeAction[], document: TextDocument): CodeAction | undefined {
    const taken: Span[] = [];
    const edits: TextEdit[] = [];
    let count = 0;
    for (const { isPreferred, edit } of fixes) {
        const changes = Object.entries(edit?.changes ?? {});
        const [uri, texts = []] = changes[0] ?? [];
        if (isPreferred !== true || changes.length !== 1 || uri !== document.uri) continue;
        const spans = texts.map(({ range, newText }) => ({
            from: document.offsetAt(range.start),
            to: document.offsetAt(range.end),
            opensBlock: /^\s*\{/.test(newText),
        }));
        if (spans.some((span) => taken.some((other) => meet(span, other)))) continue;
        taken.push(...spans);
        edits.push(...texts);
        count++;
    }
    if (count === 0) return undefined;
    const title =
        count === 1 ? phrase`Fix the one finding that has a ready fix` : phrase`Fix all ${count} findings that have a ready fix`;
    return { title, kind: CodeActionKind.SourceFixAll, edit: { changes: { [document.uri]: edits } } };
}

interface Span {
    readonly from: number;
    readonly to: number;
    /** A step without braces gets some: of two that would, the second writes into those of the first, once they are there. */
    readonly opensBlock: boolean;
}

function meet(one: Span, other: Span): boolean {
    if (one.opensBlock && other.opensBlock && one.from === other.from) return true;
    if (one.from === one.to || other.from === other.to)
        return one.from > other.from === one.to < other.to && one.from !== other.from;
    return one.from < other.to && other.from < one.to;
}
