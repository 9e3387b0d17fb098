/** Rows as CSV by RFC 4180 (CRLF, quotes doubled). */
export function csv(rows: readonly (readonly string[])[]): string {
    return `${rows.map((row) => row.map(field).join(',')).join('\r\n')}\r\n`;
}

/** Quoted where needed; a leading sign that a spreadsheet would take for a formula is kept as text. */
function field(text: string): string {
    const safe = /^[=+\-@\t\r]/.test(text) && !/^[+-]?[\d.]+$/.test(text) ? `'${text}` : text;
    return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
