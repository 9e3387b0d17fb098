import path from 'node:path';

/** The path of a file as a repository names it; undefined for one outside. Both real paths. */
export function insideOf(top: string, file: string): string | undefined {
    const relative = path.relative(top, file);
    if (relative === '' || relative === '..' || relative.startsWith(`..${path.sep}`) || path.isAbsolute(relative))
        return undefined;
    return relative.split(path.sep).join('/');
}
