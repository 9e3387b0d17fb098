/** Folders that never hold a shop's recipes and are slow to walk. */
export const skippedFolders: ReadonlySet<string> = new Set(['node_modules', '.git', 'made']);
