/** A file or folder that was renamed or moved, by its addresses. */
export interface MovedFile {
    readonly oldUri: { toString(): string };
    readonly newUri: { toString(): string };
}

/** Where a file lies now, after files or folders were moved; the same address where it was not among them. */
export function movedTo(uri: string, files: readonly MovedFile[]): string {
    for (const { oldUri, newUri } of files) {
        const old = oldUri.toString();
        if (uri === old) return newUri.toString();
        if (uri.startsWith(`${old}/`)) return `${newUri.toString()}${uri.slice(old.length)}`;
    }
    return uri;
}
