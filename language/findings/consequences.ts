import type { LangiumDocument } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import type { KerfLexingReport } from '../parsing/lexer';

/**
 * Leaves out what follows from a broken line: whatever else is found on it, and everything on the line below a text that
 * is not closed if its other half stands there.
 */
export function withoutConsequences(
    findings: readonly Finding[],
    broken: readonly Finding[],
    { textDocument, parseResult }: LangiumDocument,
): Finding[] {
    if (broken.length === 0) return [...findings];
    const lineOf = ({ where }: Finding) => textDocument.positionAt(where.offset).line;
    const lines = new Set(broken.map(lineOf));
    const causes = new Set(broken);
    const report = parseResult.lexerReport as KerfLexingReport | undefined;
    const below = (report?.open ?? []).flatMap(({ kind, token }) =>
        kind === 'text' ? [textDocument.positionAt(token.startOffset).line + 1] : [],
    );
    const halves = new Set(below.filter((line) => hasOddQuotes(lineText(line))));
    return findings.filter((finding) => {
        const line = lineOf(finding);
        return !halves.has(line) && (causes.has(finding) || finding.rule === 'syntax' || !lines.has(line));
    });

    function lineText(line: number): string {
        return textDocument.getText({ start: { line, character: 0 }, end: { line: line + 1, character: 0 } });
    }
}

function hasOddQuotes(text: string): boolean {
    return (text.match(/"/g)?.length ?? 0) % 2 === 1;
}
