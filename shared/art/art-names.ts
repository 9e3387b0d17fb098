import { Problems } from './problems';
import { buildTree, type SvgElement } from './xml/tree';
import { readXml } from './xml/xml';

/** Names by which parts of a drawing can be picked, each once, in the order of the drawing. */
export interface ArtNames {
    readonly ids: readonly string[];
    readonly classes: readonly string[];
}

/** A drawing with more names than these was named by a program, and nobody looks through them. */
const most = 400;

/** Characters; a longer file would keep whoever is typing waiting. */
const longest = 2_000_000;

/** What is in these is drawn only where something else asks for it. */
const notDrawn = new Set(
    'defs style title desc metadata symbol clipPath mask marker linearGradient radialGradient pattern filter view'.split(' '),
);

/** The ids and classes of an SVG file's text. Never throws; empty for what cannot be read. */
export function artNames(text: string): ArtNames {
    const ids = new Set<string>();
    const classes = new Set<string>();
    if (text.length <= longest) {
        for (const { attributes } of drawn(text)) {
            const { id, class: names } = attributes;
            if (id !== undefined && id !== '' && ids.size < most) ids.add(id);
            for (const name of names?.split(/\s+/) ?? []) if (name !== '' && classes.size < most) classes.add(name);
        }
    }
    return { ids: [...ids], classes: [...classes] };
}

function drawn(text: string): SvgElement[] {
    try {
        const normal = readXml(text.startsWith('\uFEFF') ? text.slice(1) : text, new Problems(text));
        if (normal === undefined) return [];
        const { root, all } = buildTree(normal);
        const hidden = new Set<SvgElement>();
        return all.filter((element) => {
            if (notDrawn.has(element.name) || (element.parent !== undefined && hidden.has(element.parent))) hidden.add(element);
            return element !== root && !hidden.has(element);
        });
    } catch {
        return [];
    }
}
