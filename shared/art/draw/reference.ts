import { phrase } from '../../recipe/phrase';
import { limits } from '../limits';
import type { Problems } from '../problems';
import type { SvgElement, SvgTree } from '../xml/tree';

/**
 * The element of this file that a reference names. One that leads out of the file is refused, and
 * said so: nothing is ever fetched.
 */
export function resolve(reference: string, tree: SvgTree, problems: Problems, from: SvgElement): SvgElement | undefined {
    const written = reference.trim();
    if (written.startsWith('#')) {
        const id = written.slice(1);
        const found = tree.byId.get(id) ?? tree.byId.get(decoded(id));
        if (found === undefined) {
            const message = phrase`<${from.name}> refers to ${short(written)}, which is not in the file.`;
            problems.add('unreadable', from.name, message, from.offset);
        }
        return found;
    }
    if (written !== '') {
        const shown = short(written);
        problems.add(
            'refused',
            from.name,
            phrase`<${from.name}> refers to something outside the file (${shown}), which is not opened.`,
            from.offset,
        );
    }
    return undefined;
}

/** An element and those that it takes over from by `href`, the nearest first. */
export function takenOver(tree: SvgTree, problems: Problems, from: SvgElement): SvgElement[] {
    const chain: SvgElement[] = [];
    let at: SvgElement | undefined = from;
    while (at !== undefined && chain.length < limits.depth && !chain.includes(at)) {
        chain.push(at);
        const href: string | undefined = at.attributes.href;
        at = href === undefined ? undefined : resolve(href, tree, problems, at);
    }
    return chain;
}

function short(text: string): string {
    return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

function decoded(id: string): string {
    try {
        return decodeURIComponent(id);
    } catch {
        return id;
    }
}
