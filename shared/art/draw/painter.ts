import type { Problems } from '../problems';
import type { SvgElement } from '../xml/tree';
import { clipByPath } from './clip-path';
import type { Drawing } from './drawing';
import { flattenGroup } from './group';
import { drawShape } from './shape';
import { tellOther } from './unsupported';
import type { Visitor } from './walk';

/** The visitor that paints: parts in the order in which they are seen. */
export function painter(drawing: Drawing): Visitor {
    const { problems, parts } = drawing;
    const visitor: Visitor = {
        shape: (element, computed, place) => drawShape(drawing, element, computed, place, visitor),
        around: (element, { style }, place, inner) => {
            if (style.opacity === 0) return;
            tellEffects(problems, element, style);
            const clip = style.clipPath === 'none' ? place.clip : clipByPath(drawing, element, style.clipPath, place);
            const from = parts.length;
            inner({ ...place, clip, opacity: place.opacity * style.opacity });
            if (style.opacity < 1) flattenGroup(parts, from);
        },
        other: (element) => tellOther(problems, element),
    };
    return visitor;
}

function tellEffects(problems: Problems, element: SvgElement, style: { mask: string; filter: string; blend: string }): void {
    for (const [name, value] of [
        ['mask', style.mask],
        ['filter', style.filter],
    ] as const) {
        if (value === 'none') continue;
        problems.add(
            'unsupported',
            name,
            `The ${name} of <${element.name}> is not supported; it is drawn without.`,
            element.offset,
        );
    }
    if (style.blend !== 'normal') {
        const message = `The mix-blend-mode of <${element.name}> is not supported; it is drawn as it is.`;
        problems.add('unsupported', 'mix-blend-mode', message, element.offset);
    }
}
