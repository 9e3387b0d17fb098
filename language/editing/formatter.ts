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
import { breakLongLines, type Placed, placedOf } from './break-lines';
import { endOf, isContinuation, type Laid, layOut, lineBreakOf } from './format-text';
import { type UnsortedClauses, unsortedClauses } from './sort-clauses';

/**
 * Lays a text out: one step of indentation a block, one blank between words, two between statements on a line; the clauses of
 * a line of art in one order. A line that is too long is broken.
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
        return this.edits(document, options, ({ offset, length }) => offset + length === here - 1, false);
    }

    private edits(
        document: LangiumDocument,
        options: FormattingOptions,
        wanted: (gap: Gap) => boolean,
        breaks = true,
    ): TextEdit[] {
        if (isNewer(document)) return [];
        const text = document.textDocument;
        const report = document.parseResult.lexerReport as KerfLexingReport | undefined;
        // The markers of a merge begin their lines, or git and every other tool no longer know them.
        if (report !== undefined && report.conflicts.length > 0) return [];
        const written = text.getText();
        const indent = options.insertSpaces === false ? '\t' : ' '.repeat(Math.min(8, Math.max(1, options.tabSize || 2)));
        const statements = statementStarts(document);
        const broken = new Set(syntaxFindings(document).map(({ where }) => text.positionAt(where.offset).line));
        const bracesPair = report === undefined || report.structure.length === 0;
        const laid = layOut({
            text: written,
            tokens: this.lexer.written(written),
            bracesPair,
            statements,
            broken,
            indent,
            goesOn: (token) => isContinuation(token, homesOf),
        });
        const lines = unsortedClauses(document);
        const placed = sorted(laid, lines);
        const lineBreak = lineBreakOf(written);
        const mayBreak = (line: readonly Placed[]): boolean =>
            bracesPair &&
            line.every(({ token }) => !broken.has((token.startLine ?? 1) - 1)) &&
            wanted({ offset: line[0]!.token.startOffset, length: 0, blanks: '' }) &&
            wanted({ offset: endOf(line.at(-1)!.token), length: 0, blanks: '' });
        const inLines = placed.map((each) => ({ ...each }));
        const isBroken = breaks && breakLongLines(inLines, { indent, lineBreak, statements, mayBreak, homes: homesOf });
        return gapsOf(written, laid, isBroken && this.readsAlike(inLines) ? inLines : placed, lines)
            .filter(wanted)
            .map(({ offset, length, blanks }) => ({
                range: { start: text.positionAt(offset), end: text.positionAt(offset + length) },
                newText: blanks,
            }));
    }

    /** Whether each word is read as what it was, wherever it stands now: first on its line, one could be something else. */
    private readsAlike(placed: readonly Placed[]): boolean {
        const again = this.lexer.written(placed.map(({ token, blanks }) => blanks + token.image).join(''));
        return (
            again.length === placed.length &&
            again.every(
                ({ image, tokenType }, index) =>
                    image === placed[index]!.token.image && tokenType.name === placed[index]!.token.tokenType.name,
            )
        );
    }
}

/** A stretch of the text and what belongs there. */
interface Gap {
    readonly offset: number;
    readonly length: number;
    readonly blanks: string;
}

/** The tokens in the order in which they are laid out; the gaps between them stay where they are. */
function sorted(laid: readonly Laid[], lines: readonly UnsortedClauses[]): Placed[] {
    const placed = placedOf(laid);
    const indexAt = new Map(lines.length === 0 ? [] : laid.map(({ token }, index) => [token.startOffset, index]));
    for (const { clauses, order } of lines) {
        const within = ({ offset, end }: { offset: number; end: number }): number[] => {
            const indices: number[] = [];
            for (let index = indexAt.get(offset) ?? laid.length; index < laid.length && endOf(laid[index]!.token) <= end; index++)
                indices.push(index);
            return indices;
        };
        const pieces = clauses.map(within);
        const start = pieces[0]?.[0];
        // Of a torn line, what was read is not what is written.
        if (start === undefined || pieces.some((piece, at) => piece[0] !== start + pieces.slice(0, at).flat().length)) continue;
        const gaps = pieces.map(([first]) => laid[first!]!.blanks);
        const tokens = order.flatMap((piece, at) =>
            pieces[piece]!.map((index, place) => ({ ...placed[index]!, ...(place === 0 && { blanks: gaps[at]! }) })),
        );
        placed.splice(start, tokens.length, ...tokens);
    }
    return placed;
}

/** What has to change: gaps, and whole stretches where clauses change places. */
function gapsOf(text: string, laid: readonly Laid[], placed: readonly Placed[], lines: readonly UnsortedClauses[]): Gap[] {
    const gaps: Gap[] = [];
    const ends = new Map(lines.map(({ clauses }) => [clauses[0]!.offset, clauses.at(-1)!.end]));
    for (let index = 0; index < laid.length; index++) {
        const { from, old, token } = laid[index]!;
        const { blanks } = placed[index]!;
        if (blanks !== old) gaps.push({ offset: from, length: old.length, blanks });
        const end = ends.get(token.startOffset);
        if (end === undefined) continue;
        let out = placed[index]!.token.image;
        while (index + 1 < laid.length && laid[index + 1]!.token.startOffset < end) {
            index++;
            out += placed[index]!.blanks + placed[index]!.token.image;
        }
        gaps.push({ offset: token.startOffset, length: end - token.startOffset, blanks: out });
    }
    const last = laid.at(-1);
    const end = last === undefined ? 0 : endOf(last.token);
    const closing = last === undefined ? '' : lineBreakOf(text);
    if (text.slice(end) !== closing) gaps.push({ offset: end, length: text.length - end, blanks: closing });
    return gaps;
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
