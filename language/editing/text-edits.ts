import type { Where } from '../../shared/quantity/where';
import type { Change } from '../../shared/recipe/finding';
import { Layout } from './layout';

/** A replacement of a span of the text, in offsets. */
export interface SpanEdit {
    readonly offset: number;
    readonly length: number;
    readonly text: string;
}

/** A change of statements as replacements of text that keep indentation, line breaks and comments. */
export function editsOf(change: Change, text: string): SpanEdit[] {
    const layout = new Layout(text);
    switch (change.do) {
        case 'replace':
            return [{ ...spanOf(change.where), text: change.text.replaceAll('\n', layout.lineBreak) }];
        case 'remove':
            return [removal(change.where, layout)];
        case 'add':
            return [addition(change.block, change.statement, layout)];
        case 'move':
            return 'after' in change
                ? moveBehind(change.statement, change.after, layout)
                : move(change.statement, change.before, layout);
    }
}

/** The file that a change is about. */
export function uriOf(change: Change): string {
    if (change.do === 'add') return change.block.uri;
    return change.do === 'move' ? change.statement.uri : change.where.uri;
}

function spanOf({ offset, length }: Where): { offset: number; length: number } {
    return { offset, length };
}

function removal({ offset, length }: Where, layout: Layout): SpanEdit {
    const end = offset + length;
    if (layout.standsAlone(offset, end)) {
        const start = layout.lineStart(offset);
        return { offset: start, length: layout.nextLine(end) - start, text: '' };
    }
    // Among others on its line it takes the blanks before it along, or those behind it at the start of the line.
    const before = blanksAtEnd(layout.text.slice(layout.lineStart(offset), offset));
    if (offset - before > layout.lineStart(offset)) return { offset: offset - before, length: length + before, text: '' };
    const after = /^[ \t]*/.exec(layout.text.slice(end))?.[0].length ?? 0;
    return { offset, length: length + after, text: '' };
}

function blanksAtEnd(text: string): number {
    return text.length - text.trimEnd().length;
}

function addition({ offset, length }: Where, statement: string, layout: Layout): SpanEdit {
    const end = offset + length;
    const block = layout.text.slice(offset, end);
    const statements = statement.split('\n');
    if (!block.endsWith('}')) return { offset: end, length: 0, text: ` { ${statements.join('  ')} }` };
    const brace = end - 1;
    // Behind a comment nothing may follow on its line.
    if (!block.includes('\n') && !statement.startsWith('//')) {
        const blanks = blanksAtEnd(block.slice(0, -1));
        const gap = block.slice(0, -1).trimEnd().endsWith('{') ? ' ' : '  ';
        return { offset: brace - blanks, length: blanks, text: `${gap}${statements.join('  ')} ` };
    }
    const outer = layout.indentAt(brace);
    const line = statements.map((each) => `${outer}${layout.indent}${each}${layout.lineBreak}`).join('');
    const start = layout.lineStart(brace);
    if (layout.text.slice(start, brace).trim() === '') return { offset: start, length: 0, text: line };
    return { offset: brace, length: 0, text: `${layout.lineBreak}${line}${outer}` };
}

/** Takes the comment lines right above the statement along, and gives it the indentation of its new place. */
function move(statement: Where, before: Where, layout: Layout): SpanEdit[] {
    const { body, gone } = taken(statement, layout);
    const target =
        layout.standsAlone(statement.offset, statement.offset + statement.length) &&
        layout.text.slice(layout.lineStart(before.offset), before.offset).trim() === ''
            ? withComments(before.offset, layout)
            : before.offset;
    const indent = layout.indentAt(before.offset);
    const moved = reindent(body, layout.indentAt(statement.offset), indent);
    const atLineStart = target === layout.lineStart(target);
    const text = atLineStart ? `${indent}${moved}${layout.lineBreak}` : `${moved}${layout.lineBreak}${indent}`;
    return [{ offset: target, length: 0, text }, gone];
}

/** The same onto a line of its own behind another statement, and behind a comment that ends that line. */
function moveBehind(statement: Where, after: Where, layout: Layout): SpanEdit[] {
    const { body, gone } = taken(statement, layout);
    const indent = layout.indentAt(after.offset);
    const moved = reindent(body, layout.indentAt(statement.offset), indent);
    const end = after.offset + after.length;
    const rest = layout.text.slice(end, layout.lineEnd(end));
    const target = /^\s*(\/\/.*)?$/.test(rest) ? end + rest.length : end;
    return [{ offset: target, length: 0, text: `${layout.lineBreak}${indent}${moved}` }, gone];
}

/** A statement's text with its comments, and what takes it away. */
function taken(statement: Where, layout: Layout): { body: string; gone: SpanEdit } {
    const end = statement.offset + statement.length;
    const alone = layout.standsAlone(statement.offset, end);
    const start = alone ? withComments(statement.offset, layout) : statement.offset;
    const gone = alone
        ? { offset: start, length: layout.nextLine(end) - start, text: '' }
        : removal({ ...statement, offset: start, length: end - start }, layout);
    return { body: layout.text.slice(start, end).trimStart(), gone };
}

function withComments(offset: number, layout: Layout): number {
    let start = layout.lineStart(offset);
    while (start > 0) {
        const above = layout.lineStart(start - 1);
        if (!/^\s*\/\//.test(layout.text.slice(above, start))) break;
        start = above;
    }
    return start;
}

function reindent(body: string, from: string, to: string): string {
    if (from === to) return body;
    return body.replaceAll(/\n[ \t]*/g, (blanks) =>
        blanks.startsWith(`\n${from}`) ? `\n${to}${blanks.slice(1 + from.length)}` : blanks,
    );
}
