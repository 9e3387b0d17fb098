import { type AstNode, AstUtils, type LangiumDocument } from 'langium';
import type { Formatter, LangiumServices } from 'langium/lsp';
import type {
    DocumentFormattingParams,
    DocumentOnTypeFormattingOptions,
    DocumentOnTypeFormattingParams,
    DocumentRangeFormattingParams,
    DocumentRangesFormattingParams,
    FormattingOptions,
    TextEdit,
} from 'vscode-languageserver';
import { isNewer } from '../edition';
import { syntaxFindings } from '../findings/syntax';
import { isFile } from '../generated/ast';
import type { KerfLexer, KerfLexingReport } from '../parsing/lexer';
import { homesOf } from '../vocabulary/blocks';
import { formatGaps, type Gap, isContinuation } from './format-text';
import { sortedClauses } from './sort-clauses';

/**
 * Lays a text out: one step of indentation a block, one blank between words, two between statements on a line; the clauses of
 * a line of art in one order.
 */
export class KerfFormatter implements Formatter {
    readonly formatOnTypeOptions: DocumentOnTypeFormattingOptions = { firstTriggerCharacter: '}' };
    private readonly lexer: KerfLexer;

    constructor(services: LangiumServices) {
        this.lexer = services.parser.Lexer as KerfLexer;
    }

    formatDocument(document: LangiumDocument, params: DocumentFormattingParams): TextEdit[] {
        return this.edits(document, params.options, () => true);
    }

    formatDocumentRange(document: LangiumDocument, { range, ...params }: DocumentRangeFormattingParams): TextEdit[] {
        return this.formatDocumentRanges(document, { ...params, ranges: [range] });
    }

    formatDocumentRanges(document: LangiumDocument, { options, ranges }: DocumentRangesFormattingParams): TextEdit[] {
        const spans = ranges.map(({ start, end }) => [
            document.textDocument.offsetAt(start),
            document.textDocument.offsetAt(end),
        ]);
        return this.edits(document, options, ({ offset, length }) =>
            spans.some(([start, end]) => offset + length >= start! && offset <= end!),
        );
    }

    /** Only the line of the brace that was typed moves. */
    formatDocumentOnType(document: LangiumDocument, { options, position }: DocumentOnTypeFormattingParams): TextEdit[] {
        const here = document.textDocument.offsetAt(position);
        return this.edits(document, options, ({ offset, length }) => offset + length === here - 1);
    }

    private edits(document: LangiumDocument, options: FormattingOptions, wanted: (gap: Gap) => boolean): TextEdit[] {
        if (isNewer(document)) return [];
        const text = document.textDocument;
        const report = document.parseResult.lexerReport as KerfLexingReport | undefined;
        // The markers of a merge begin their lines, or git and every other tool no longer know them.
        if (report !== undefined && report.conflicts.length > 0) return [];
        const gaps = formatGaps({
            text: text.getText(),
            tokens: this.lexer.written(text.getText()),
            bracesPair: report === undefined || report.structure.length === 0,
            statements: statementStarts(document),
            broken: new Set(syntaxFindings(document).map(({ where }) => text.positionAt(where.offset).line)),
            indent: options.insertSpaces === false ? '\t' : ' '.repeat(Math.min(8, Math.max(1, options.tabSize || 2))),
            goesOn: (token) => isContinuation(token, homesOf),
        });
        const sorted = sortedClauses(document, gaps);
        const isInside = ({ offset, length }: Gap) =>
            sorted.some((line) => offset >= line.offset && offset + length <= line.offset + line.length);
        return [...gaps.filter((gap) => !isInside(gap)), ...sorted].filter(wanted).map(({ offset, length, blanks }) => ({
            range: { start: text.positionAt(offset), end: text.positionAt(offset + length) },
            newText: blanks,
        }));
    }
}

/** Where lines of a block and steps of a recipe begin. */
function statementStarts(document: LangiumDocument): Set<number> {
    const starts = new Set<number>();
    for (const node of AstUtils.streamAst(document.parseResult.value)) {
        const members = isFile(node) ? [...node.uses, ...node.entries] : ((node as { items?: readonly AstNode[] }).items ?? []);
        for (const { $cstNode } of members) if ($cstNode !== undefined) starts.add($cstNode.offset);
    }
    return starts;
}
