/**
 * A folder into which files are written, on a disk or in an editor's file system. It need not be there yet. Paths in it have
 * forward slashes and were looked at with `safePath`. No link is followed: neither to a file nor out of the workspace.
 */
export interface Store {
    /** What lies at a path. @throws CannotWrite where nothing may be written */
    look(path: string): Promise<Found>;
    /**
     * Puts all these files there or none: each is whole under its name or not there at all, and a link gives way to the file.
     * @throws CannotWrite with why, nothing new left behind
     */
    replace(files: ReadonlyMap<string, Uint8Array>): Promise<void>;
    /** Takes files away, and folders of this one that are empty then. @throws CannotWrite */
    remove(paths: readonly string[]): Promise<void>;
}

export type Found = { readonly kind: 'missing' | 'folder' | 'link' } | { readonly kind: 'file'; readonly bytes: Uint8Array };

/** The store of a folder, by its address. */
export type OpenStore = (folder: string) => Store;
