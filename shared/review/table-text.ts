import { csv } from '../sheets/csv';
import { escapeMarkdown as md, table } from './markdown';
import { oneLine } from './one-line';
import type { TableRow, VariantTable } from './variant-table';

/** Widest column of words in a terminal, characters. */
const widest = 34;

/** A table for a terminal. What was worked out has `=` before it. */
export function tableText({ columns, groups }: VariantTable): string {
    if (groups.length === 0) return 'They differ in nothing.\n';
    const head = ['', ...columns.map(({ recipe }) => oneLine(recipe))];
    const body = groups.flatMap(({ title, rows }) => [
        [oneLine(title)],
        ...rows.map((row) => [`  ${name(row)}`, ...texts(row, '-')]),
    ]);
    const widths = head.map((_, at) =>
        Math.min(widest, Math.max(...[head, ...body].map((cells) => (cells.length > 1 ? (cells[at]?.length ?? 0) : 0)))),
    );
    return `${[head, ...body].flatMap((cells) => (cells.length === 1 ? cells : laidOut(cells, widths))).join('\n')}\n`;
}

/** One row as lines: words that are too long for their column go on below. */
function laidOut(cells: readonly string[], widths: readonly number[]): string[] {
    const wrapped = cells.map((cell, at) => wrap(cell, widths[at]!));
    const height = Math.max(...wrapped.map((lines) => lines.length));
    return Array.from({ length: height }, (_, line) =>
        wrapped
            .map((lines, at) => (lines[line] ?? '').padEnd(widths[at]!))
            .join('  ')
            .trimEnd(),
    );
}

function wrap(text: string, width: number): string[] {
    const indent = /^ */.exec(text)![0];
    const lines: string[] = [];
    let line = '';
    for (const piece of text.trim().split(' ')) {
        if (line !== '' && indent.length + line.length + 1 + piece.length > width) {
            lines.push(indent + line);
            line = piece;
        } else line = line === '' ? piece : `${line} ${piece}`;
    }
    return [...lines, indent + line];
}

export function tableMarkdown({ columns, groups }: VariantTable): string {
    if (groups.length === 0) return 'They differ in nothing.\n';
    const head = ['', ...columns.map(({ recipe, title }) => md(title === '' ? recipe : title))];
    const rows = groups.flatMap(({ title, rows: all }) => [
        [`**${md(title)}**`, ...columns.map(() => '')],
        ...all.map((row) => [`${row.kind === 'follows' ? '↳ ' : ''}${md(row.label)}`, ...texts(row, '–').map(md)]),
    ]);
    return table(head, rows).join('\n');
}

/** Rows for a spreadsheet: where it belongs, what it is, whether it was written or follows, then a column for each recipe. */
export function tableCsv({ columns, groups }: VariantTable): string {
    return csv([
        ['of', 'what', 'kind', ...columns.map(({ recipe }) => recipe)],
        ...groups.flatMap(({ title, rows }) =>
            rows.map((row) => [title, row.label, row.kind, ...texts(row, '')].map((text) => oneLine(text))),
        ),
    ]);
}

function name({ label, kind }: TableRow): string {
    return `${kind === 'follows' ? '= ' : ''}${oneLine(label)}`;
}

function texts({ cells }: TableRow, absent: string): string[] {
    return cells.map((cell) => (cell === null ? absent : oneLine(cell.text)));
}
