import type { Region } from '../../geometry/region';
import { phrase } from '../../recipe/phrase';
import type { Problems } from '../problems';
import type { SvgElement } from '../xml/tree';
import { clipToRegion } from './clip-box';
import { clipByPath } from './clip-path';
import type { Drawing, DrawnPart, Place } from './drawing';
import { panesOfMask } from './mask';
import { drawShape } from './shape';
import { tellOther } from './unsupported';
import type { Visitor } from './walk';

/** The visitor that paints: parts in the order in which they are seen. */
export function painter(drawing: Drawing): Visitor {
    const { problems, parts } = drawing;
    const visitor: Visitor = {
        shape: (element, computed, place) => drawShape(drawing, element, computed, place, visitor, painter),
        around: (element, { style }, place, inner) => {
            if (style.opacity === 0) return;
            tellEffects(problems, element, style);
            const clip = style.clipPath === 'none' ? place.clip : clipByPath(drawing, element, style.clipPath, place);
            for (const pane of panesOf(drawing, element, style, { ...place, clip })) {
                const from = parts.length;
                const opacity = style.opacity * pane.through;
                const seen = pane.region === undefined ? clip : clipToRegion(clip, pane.region);
                if (opacity >= 1) inner({ ...place, clip: seen });
                else {
                    inner({ ...place, clip: seen, groups: [...place.groups, { opacity }] });
                    if (parts.length === from + 1) parts[from] = withoutGroup(parts[from]!);
                }
            }
        },
        other: (element) => tellOther(problems, element),
    };
    return visitor;
}

/** A part that is all of the innermost group around it: as translucent as that, by itself. */
function withoutGroup(part: DrawnPart): DrawnPart {
    const groups = part.groups?.slice(0, -1) ?? [];
    const by = part.groups?.at(-1)?.opacity ?? 1;
    const { groups: _, shading, ...rest } = part;
    const stops = shading?.stops.map((stop) => ({ ...stop, opacity: stop.opacity * by }));
    return {
        ...rest,
        darkness: part.darkness * by,
        opacity: part.opacity * by,
        ...(shading === undefined ? {} : { shading: { ...shading, stops: stops! } }),
        ...(groups.length === 0 ? {} : { groups }),
    };
}

/** Everywhere where there is no region. */
interface SeenThrough {
    readonly region?: Region;
    readonly through: number;
}

/** What an element is seen through: all of it at once where it has no mask. */
function panesOf(drawing: Drawing, element: SvgElement, { mask }: { mask: string }, place: Place): readonly SeenThrough[] {
    const whole = [{ through: 1 }];
    if (mask === 'none') return whole;
    const panes = panesOfMask(drawing, element, mask, place, painter);
    if (panes !== undefined) return panes;
    const message = phrase`The mask of <${element.name}> could not be used; it is drawn without.`;
    drawing.problems.add('unsupported', 'mask', message, element.offset);
    return whole;
}

function tellEffects(problems: Problems, element: SvgElement, style: { filter: string; blend: string }): void {
    if (style.filter !== 'none') {
        const message = phrase`The filter of <${element.name}> is not supported; it is drawn without.`;
        problems.add('unsupported', 'filter', message, element.offset);
    }
    if (style.blend !== 'normal') {
        const message = phrase`The mix-blend-mode of <${element.name}> is not supported; it is drawn as it is.`;
        problems.add('unsupported', 'mix-blend-mode', message, element.offset);
    }
}
