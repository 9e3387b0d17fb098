import { subtract } from '../../geometry/boolean';
import { type Bounds, type Region, tangledRegion } from '../../geometry/region';
import { type Matrix, multiply } from '../../geometry/transform';
import type { ArtPart } from '../art';
import { darkAt } from '../compose/translucent';
import { toPixels } from '../frame/length';
import { limits } from '../limits';
import { computeStyle } from '../style/computed';
import { parseUrl } from '../style/url';
import type { SvgElement } from '../xml/tree';
import { boundingBox } from './bounding-box';
import { boxOfPlace, clipToBox } from './clip-box';
import { type Drawing, lengthsOf, type Pane, type Place } from './drawing';
import { resolve } from './reference';
import { type Visitor, walk } from './walk';

/** Steps in which a mask's greys are taken. */
const steps = 8;

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
        drawing.problems.add('refused', 'mask', 'A <mask> is masked by itself.', target.offset);
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
        drawing.problems.add('too-large', 'mask', `Only ${limits.masks} masks are drawn.`, target.offset);
        return undefined;
    }
    // Independent of what is clipped around the element, so that it can be kept.
    const clip = clipToBox({ box: boxOfPlace(page.width, page.height), region: undefined }, windowMatrix, window);
    const parts: ArtPart[] = [];
    const inside: Place = {
        ...place,
        matrix,
        style: computed.style,
        clip,
        context: undefined,
        opacity: 1,
        within: [...place.within, target],
        depth: place.depth + 1,
    };
    const sub: Drawing = { ...drawing, parts, drawn: drawing.drawn };
    const visitor = paint(sub);
    for (const child of target.children) walk(sub, child, inside, visitor);
    drawing.drawn = sub.drawn;
    const alpha = /^\s*alpha\s*$/.test(computed.text('mask-type') ?? '');
    const found = panes(parts.map((part) => ({ ...part, darkness: alpha ? part.opacity : part.opacity - part.darkness })));
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

/** `parts` have as darkness what they let through, laid on nothing. */
function panes(parts: readonly ArtPart[]): Pane[] | undefined {
    const grey = parts.some(({ darkness, opacity }) => opacity < 0.99 || (darkness > 0.02 && darkness < 0.98));
    const levels = grey ? steps : 1;
    const found: Pane[] = [];
    let above: Region | undefined;
    for (let level = levels; level >= 1; level--) {
        const region = darkAt(parts, (level - 0.5) / levels);
        if (region === tangledRegion) return undefined;
        const band = above === undefined ? region : subtract(region, above);
        above = region;
        if (band.rings.length > 0) found.push({ region: band, through: level / levels });
    }
    return found;
}
