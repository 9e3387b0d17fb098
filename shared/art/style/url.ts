/**
 * A `url(…)` at the beginning of a value, and what follows it; undefined if there is none. By hand,
 * since a regular expression takes forever over a long run of spaces in it.
 */
export function parseUrl(text: string): { readonly reference: string; readonly rest: string } | undefined {
    const value = text.trim();
    if (value.slice(0, 4).toLowerCase() !== 'url(') return undefined;
    const inner = value.slice(4).trimStart();
    const quote = inner[0] === '"' || inner[0] === "'" ? inner[0] : undefined;
    const end = quote === undefined ? inner.indexOf(')') : inner.indexOf(quote, 1);
    if (end < 0) return undefined;
    const reference = quote === undefined ? inner.slice(0, end).trimEnd() : inner.slice(1, end);
    const after = quote === undefined ? inner.slice(end) : inner.slice(end + 1).trimStart();
    return after.startsWith(')') ? { reference, rest: after.slice(1).trim() } : undefined;
}
