import { oneLine } from './one-line';

/** Longest run of a recipe's own words in a report that people read, characters. */
const longest = 500;

/**
 * Words of a recipe as Markdown that shows them and does nothing else: no markup, no HTML, no link,
 * no table cell (CommonMark 0.31.2, 2.4 Backslash escapes), and nobody is called by an @.
 */
export function escapeMarkdown(text: string): string {
    return escaped(oneLine(text, longest));
}

function escaped(line: string): string {
    return line
        .replaceAll('&', '&amp;')
        .replaceAll('<', '&lt;')
        .replaceAll('>', '&gt;')
        .replace(/[\\`*_{}[\]()#|~!^$]/g, '\\$&')
        .replace(/:(?=\/\/)/g, '&#58;')
        .replace(/\b(www)\./gi, '$1&#46;')
        .replace(/@/g, '@\u2060');
}

/** The same between back quotes, for names and file names. */
export function codeSpan(text: string): string {
    const plain = oneLine(text, longest).replaceAll('|', '¦');
    const longestRun = Math.max(0, ...(plain.match(/`+/g) ?? []).map((run) => run.length));
    const fence = '`'.repeat(longestRun + 1);
    const pad = plain.startsWith('`') || plain.endsWith('`') || plain === '' ? ' ' : '';
    return `${fence}${pad}${plain}${pad}${fence}`;
}

/** What the program says, in which names stand between back quotes: those become code, all else is shown as it is. */
export function spokenMarkdown(message: string): string {
    return oneLine(message, longest)
        .split(/`([^`]+)`/)
        .map((part, index) => (index % 2 === 1 ? codeSpan(part) : escaped(part)))
        .join('');
}

/** A table; cells are Markdown already. Nothing for no rows. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
    if (rows.length === 0) return [];
    const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
    return [line(head), line(head.map(() => '---')), ...rows.map(line), ''];
}
