import type { LangiumDocument } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { phrase } from '../../shared/recipe/phrase';
import type { KerfLexingReport } from '../parsing/lexer';
import type { StructureProblem } from '../parsing/structure';
import { mostErrors } from '../parsing/token';
import { braceFinding } from './braces';
import { brokenLine } from './broken-line';
import { conflictFinding } from './conflicts';
import { openFinding } from './left-open';
import { say } from './say';

/**
 * Broken lines, each said once, in a maker's words. Whatever follows on a line that is broken
 * already is a consequence and is left unsaid.
 * @param strays words that broke their line without the parser's noticing
 */
export function syntaxFindings(document: LangiumDocument, strays: Iterable<Finding> = []): Finding[] {
    const report = document.parseResult.lexerReport as KerfLexingReport | undefined;
    const text = document.textDocument;
    const uri = document.uri.toString();
    const found = [
        ...document.parseResult.parserErrors.map((error) => brokenLine(error, document)),
        ...(report?.open ?? []).map((open) => openFinding(open, uri)),
        ...(report?.structure ?? []).filter(isOfItsOwn).map((problem) => braceFinding(problem, document)),
        ...strays,
    ];
    const conflicts = report?.conflicts ?? [];
    const isInConflict = ({ where }: Finding): boolean =>
        conflicts.some(({ offset, end }) => offset <= where.offset && where.offset < end);
    const byLine = new Map<number, Finding>();
    for (const finding of found) {
        if (isInConflict(finding)) continue;
        const { line } = text.positionAt(finding.where.offset);
        const earlier = byLine.get(line);
        if (earlier === undefined || finding.where.offset < earlier.where.offset) byLine.set(line, finding);
    }
    const findings = [...conflicts.map((conflict) => conflictFinding(conflict, uri)), ...byLine.values()];
    if (document.parseResult.parserErrors.length >= mostErrors) findings.push(tooMany(document));
    return findings;
}

/** Lines below each other that all lack a brace are the lines of one block, of which the first line is broken: only the first of them is told. */
function isOfItsOwn({ kind, token }: StructureProblem, index: number, all: readonly StructureProblem[]): boolean {
    const above = all[index - 1];
    return kind !== 'unopened' || above?.kind !== 'unopened' || token.startLine !== (above.token.startLine ?? 0) + 1;
}

function tooMany(document: LangiumDocument): Finding {
    const where = { uri: document.uri.toString(), offset: 0, length: 0 };
    return say('syntax', { message: phrase`After ${mostErrors} broken lines the rest of this file is left unread.`, where });
}
