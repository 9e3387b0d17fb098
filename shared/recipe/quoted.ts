/** A text between quotation marks, as the language reads it back. Line breaks and runs of blanks become one blank. */
export function quoted(text: string): string {
    return quotedPath(text.trim().replaceAll(/\s+/g, ' '));
}

/** The same with every blank kept, since a file may be named so. */
export function quotedPath(path: string): string {
    return `"${path.replaceAll(/["\\]/g, '\\$&')}"`;
}
