/** Bytes of a file with a mark that changes when they do, or why there are none. */
export type ReadResult =
    | { readonly bytes: Uint8Array; readonly version: string }
    | { readonly problem: 'missing' | 'outside' | 'too-large' | 'unreadable'; readonly version: string };

/** Reads one file; how is the process's own business (disk, editor, memory). Never throws. */
export type FileReader = (uri: string) => Promise<ReadResult>;

/** Larger art is refused before it is read: bytes. */
export const largestArt = 32 * 1024 * 1024;
