import { subtract } from '../../geometry/boolean';
import { type Bounds, type Region, tangledRegion } from '../../geometry/region';
import { type Matrix, multiply } from '../../geometry/transform';
import { phrase } from '../../recipe/phrase';
import { darkAt } from '../compose/translucent';
import { toPixels } from '../frame/length';
import { limits } from '../limits';
import { computeStyle } from '../style/computed';
import { parseUrl } from '../style/url';
import type { SvgElement } from '../xml/tree';
import { boundingBox } from './bounding-box';
import { boxOfPlace, clipToBox } from './clip-box';
import { type Drawing, type DrawnPart, lengthsOf, type Pane, type Place } from './drawing';
import { resolve } from './reference';
import { type Visitor, walk } from './walk';

/** Steps in which a mask's greys are taken, and what counts as white or black. */
const steps = 16;
const edge = 0.004;

/**
 * The panes that an element is seen through by its `mask` (CSS Masking 1): where the mask's content
 * is white it shows, where it is black or nothing it does not, and in between it is translucent.
 * One pane for most masks, which are black and white. Undefined if there is no such mask, or it is
 * too tangled to be worked out.
 */
export function panesOfMask(
    drawing: Drawing,
    element: SvgElement,
    value: string,
    place: Place,
    paint: (drawing: Drawing) => Visitor,
): readonly Pane[] | undefined {
    const url = parseUrl(value)?.reference;
    const target = url === undefined ? undefined : resolve(url, drawing.tree, drawing.problems, element);
    if (target?.name !== 'mask') return undefined;
    if (place.within.includes(target)) {
        drawing.problems.add('refused', 'mask', phrase`A <mask> is masked by itself.`, target.offset);
        return undefined;
    }
    const { attributes } = target;
    const ofBox = attributes.maskUnits !== 'userSpaceOnUse';
    const ofContent = attributes.maskContentUnits === 'objectBoundingBox';
    const ofUser = !ofBox && !ofContent;
    const toBox = ofUser ? undefined : matrixToBox(boundingBox(drawing, element, place));
    if (toBox === undefined && !ofUser) return [];
    const style = drawing.inherited.around(target);
    const frame = { ...place, width: ofBox ? 1 : place.width, height: ofBox ? 1 : place.height, style };
    const computed = computeStyle(target, style, drawing.cascade, lengthsOf(drawing, frame), drawing.problems);
    const context = { ...lengthsOf(drawing, frame), fontSize: computed.style.fontSize };
    const window = windowOf(attributes, (written, axis, usual) => {
        return toPixels(written ?? usual, axis, context) ?? toPixels(usual, axis, context) ?? 0;
    });
    const windowMatrix = ofBox && toBox ? multiply(place.matrix, toBox) : place.matrix;
    const matrix = ofContent && toBox ? multiply(place.matrix, toBox) : place.matrix;
    const key = [target.offset, ...Object.values(matrix), ...Object.values(windowMatrix)].join(' ');
    const { masks, page } = drawing;
    if (masks.known.has(key)) return masks.known.get(key);
    if (masks.left-- <= 0) {
        drawing.problems.add('too-large', 'mask', phrase`Only ${limits.masks} masks are drawn.`, target.offset);
        return undefined;
    }
    // Independent of what is clipped around the element, so that it can be kept.
    const clip = clipToBox({ box: boxOfPlace(page.width, page.height), region: undefined }, windowMatrix, window);
    const parts: DrawnPart[] = [];
    const inside: Place = {
        ...place,
        matrix,
        style: computed.style,
        clip,
        context: undefined,
        groups: [],
        within: [...place.within, target],
        depth: place.depth + 1,
    };
    const sub: Drawing = { ...drawing, parts, drawn: drawing.drawn };
    const visitor = paint(sub);
    for (const child of target.children) walk(sub, child, inside, visitor);
    drawing.drawn = sub.drawn;
    const alpha = /^\s*alpha\s*$/.test(computed.text('mask-type') ?? '');
    const found = panes(parts.map((part) => lettingThrough(part, alpha)));
    masks.known.set(key, found);
    return found;
}

/** Takes the unit square to a box; undefined for one without an area. */
function matrixToBox(box: Bounds | undefined): Matrix | undefined {
    if (box === undefined || !(box.maxX > box.minX && box.maxY > box.minY)) return undefined;
    return { a: box.maxX - box.minX, b: 0, c: 0, d: box.maxY - box.minY, e: box.minX, f: box.minY };
}

/** The rectangle in which a mask has an effect, a tenth beyond what is masked unless it says otherwise. */
function windowOf(
    attributes: SvgElement['attributes'],
    length: (written: string | undefined, axis: 'x' | 'y', usual: string) => number,
): Bounds {
    const minX = length(attributes.x, 'x', '-10%');
    const minY = length(attributes.y, 'y', '-10%');
    const maxX = minX + length(attributes.width, 'x', '120%');
    return { minX, minY, maxX, maxY: minY + length(attributes.height, 'y', '120%') };
}

/** A part with what it lets through in the place of its darkness: its lightness, or its alpha. */
function lettingThrough(part: DrawnPart, alpha: boolean): DrawnPart {
    const { shading } = part;
    const turned = { ...part, darkness: alpha ? part.opacity : part.opacity - part.darkness };
    if (shading === undefined) return turned;
    const stops = shading.stops.map(({ at, darkness, opacity }) => ({ at, opacity, darkness: alpha ? 1 : 1 - darkness }));
    return { ...turned, shading: { ...shading, stops } };
}

/** `parts` have as darkness what they let through, laid on nothing. */
function panes(parts: readonly DrawnPart[]): Pane[] | undefined {
    const grey = parts.some(
        ({ darkness, opacity, shading, groups = [] }) =>
            opacity < 0.99 || (darkness > 0.02 && darkness < 0.98) || shading !== undefined || groups.length > 0,
    );
    // From the lightest: what lets through all, then bands that end at half, as burns do; next to nothing is nothing.
    const bands = Array.from({ length: steps }, (_, i) => ({ from: 1 - (i + 1) / steps, through: 1 - (i + 0.5) / steps }));
    const levels = grey ? [{ from: 1 - edge, through: 1 }, ...bands] : [{ from: 0.5, through: 1 }];
    const found: Pane[] = [];
    let above: Region | undefined;
    for (const { from, through } of levels) {
        const region = darkAt(parts, Math.max(edge, from));
        if (region === tangledRegion) return undefined;
        const band = above === undefined ? region : subtract(region, above);
        above = region;
        if (band.rings.length > 0) found.push({ region: band, through });
    }
    return found;
}
