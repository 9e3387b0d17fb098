import type { Problems } from '../problems';
import type { SvgElement, SvgTree } from '../xml/tree';

/** The text inside `url(…)`; undefined if it is not one. */
export function urlOf(text: string): string | undefined {
    return /^url\(\s*(["']?)(.*?)\1\s*\)/is.exec(text.trim())?.[2]?.trim();
}

/**
 * The element of this file that a reference names. One that leads out of the file is refused, and
 * said so: nothing is ever fetched.
 */
export function resolve(reference: string, tree: SvgTree, problems: Problems, from: SvgElement): SvgElement | undefined {
    const written = reference.trim();
    if (written.startsWith('#')) {
        const id = written.slice(1);
        return tree.byId.get(id) ?? tree.byId.get(decoded(id));
    }
    if (written !== '') {
        const shown = written.length > 60 ? `${written.slice(0, 57)}…` : written;
        problems.add(
            'refused',
            from.name,
            `<${from.name}> refers to something outside the file (${shown}), which is not opened.`,
            from.offset,
        );
    }
    return undefined;
}

function decoded(id: string): string {
    try {
        return decodeURIComponent(id);
    } catch {
        return id;
    }
}
