/**
 * A relative path split into names that may be made on any system, or undefined when it would
 * leave the folder or cannot be a file name everywhere (reserved device names, control characters).
 */
export function safePath(path: string): string[] | undefined {
    const names = path.split('/');
    return names.every(isSafeName) ? names : undefined;
}

export function isSafeName(name: string): boolean {
    if (name === '' || name.length > 200 || /[. ]$/.test(name)) return false;
    if (/[\\/:*?"<>|]/.test(name) || [...name].some((letter) => letter < ' ')) return false;
    return !isReserved(name);
}

/** Names of devices, which some systems keep to themselves whatever ending they have. */
export function isReserved(name: string): boolean {
    return /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i.test(name);
}
