import { intersect, union } from '../../geometry/boolean';
import { type Bounds, emptyRegion, type Region } from '../../geometry/region';
import { multiply } from '../../geometry/transform';
import { phrase } from '../../recipe/phrase';
import { computeStyle } from '../style/computed';
import { parseUrl } from '../style/url';
import type { SvgElement } from '../xml/tree';
import { boundingBox } from './bounding-box';
import { clipToRegion, everywhere } from './clip-box';
import { type Clip, type Drawing, lengthsOf, type Place } from './drawing';
import { outlineOf } from './outline';
import { resolve } from './reference';
import { fillRegion, untangled } from './shape-regions';
import { transformOf, type Visitor, walk } from './walk';

/** Narrows a place's clip by the `clip-path` of the element there. */
export function clipByPath(drawing: Drawing, element: SvgElement, value: string, place: Place): Clip {
    const url = parseUrl(value)?.reference;
    if (url === undefined) {
        const message = phrase`This form of clip-path on <${element.name}> is not supported; it is drawn whole.`;
        drawing.problems.add('unsupported', 'clip-path', message, element.offset);
        return place.clip;
    }
    const target = resolve(url, drawing.tree, drawing.problems, element);
    if (target?.name !== 'clipPath') return place.clip;
    const region = regionOf(drawing, target, element, place);
    return region === undefined ? place.clip : clipToRegion(place.clip, region);
}

/** The clip path's region on the page; undefined if it is defined by itself. */
function regionOf(drawing: Drawing, target: SvgElement, element: SvgElement, place: Place): Region | undefined {
    if (place.within.includes(target)) {
        drawing.problems.add('refused', 'clipPath', phrase`A <clipPath> is clipped by itself.`, target.offset);
        return undefined;
    }
    let { matrix } = place;
    if (target.attributes.clipPathUnits === 'objectBoundingBox') {
        const box = boundingBox(drawing, element, place);
        if (box === undefined || !(box.maxX > box.minX && box.maxY > box.minY)) return emptyRegion;
        matrix = multiply(matrix, { a: box.maxX - box.minX, b: 0, c: 0, d: box.maxY - box.minY, e: box.minX, f: box.minY });
    }
    const key = `${target.offset} ${Object.values(matrix).join(' ')}`;
    const known = drawing.clipRegions.get(key);
    if (known !== undefined) return known;
    const start: Place = {
        ...place,
        matrix,
        style: drawing.inherited.around(target),
        clip: { box: everywhere, region: undefined },
        within: [...place.within, target],
        depth: place.depth + 1,
    };
    const computed = computeStyle(target, start.style, drawing.cascade, lengthsOf(drawing, start), drawing.problems);
    const inside: Place = {
        ...start,
        matrix: multiply(matrix, transformOf(drawing, target, computed, start)),
        style: computed.style,
    };
    const regions: Region[] = [];
    const collect = collector(drawing, regions);
    for (const child of target.children) {
        if (child.name === 'g' || child.name === 'svg' || child.name === 'switch') {
            const message = phrase`A <${child.name}> in a <clipPath> has no effect; only shapes count there.`;
            drawing.problems.add('unsupported', child.name, message, child.offset);
        } else {
            walk(drawing, child, inside, collect);
        }
    }
    let region = untangled(drawing, target, union(regions));
    if (computed.style.clipPath !== 'none') {
        const outer = clipByPath(drawing, target, computed.style.clipPath, { ...inside, clip: start.clip });
        region = untangled(drawing, target, within(region, outer));
    }
    drawing.clipRegions.set(key, region);
    return region;
}

/** Collects what each shape fills by its clip-rule, whatever its paint. */
function collector(drawing: Drawing, regions: Region[]): Visitor {
    return {
        shape: (element, computed, place) => {
            if (!computed.style.visible) return;
            const paths = outlineOf(drawing, element, computed, place, Math.PI);
            regions.push(fillRegion(drawing, element, paths, computed.style.clipRule, place));
        },
        around: (element, { style }, place, inner) => {
            inner(style.clipPath === 'none' ? place : { ...place, clip: clipByPath(drawing, element, style.clipPath, place) });
        },
        other: (element) => {
            const message = phrase`<${element.name}> in a <clipPath> is not supported and is left out.`;
            drawing.problems.add(element.name === 'text' ? 'text' : 'unsupported', element.name, message, element.offset);
        },
    };
}

function within(region: Region, { box, region: window }: Clip): Region {
    const boxed = box === everywhere ? region : intersect(region, { rings: [corners(box)] });
    return window === undefined ? boxed : intersect(boxed, window);
}

function corners({ minX, minY, maxX, maxY }: Bounds): Float64Array {
    return Float64Array.of(minX, minY, maxX, minY, maxX, maxY, minX, maxY);
}
