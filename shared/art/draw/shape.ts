import { intersect, union, unite } from '../../geometry/boolean';
import { dash } from '../../geometry/dash';
import { bounds } from '../../geometry/measure';
import { emptyRegion, type Region } from '../../geometry/region';
import { type Matrix, transformRing } from '../../geometry/transform';
import { type Path, widen } from '../../geometry/widen';
import { type Colour, darknessOf, hexOverWhite } from '../style/colour';
import type { Computed } from '../style/computed';
import type { Style } from '../style/properties';
import type { SvgElement } from '../xml/tree';
import { isEmptyBox, regionOfBox } from './clip-box';
import { cutRings } from './cut-rings';
import type { Clip, Drawing, Place } from './drawing';
import { innerWedges } from './inner-wedges';
import { largestScale, outlineOf } from './outline';
import { colourOf } from './paint';

/** Draws a shape's fill and stroke, in the order in which they are painted. */
export function drawShape(drawing: Drawing, element: SvgElement, computed: Computed, place: Place): void {
    const { style } = computed;
    if (!style.visible || isEmptyBox(place.clip.box)) return;
    const fill = element.name === 'line' ? undefined : colourOf(drawing, style.fill, style, element, place);
    const stroke = style.strokeWidth > 0 ? colourOf(drawing, style.stroke, style, element, place) : undefined;
    if (fill === undefined && stroke === undefined) return;
    const paths = outlineOf(drawing, element, computed, place, stroke === undefined ? Math.PI : bendFor(drawing, style, place));
    if (paths.length === 0) return;
    for (const layer of style.paintOrder) {
        if (layer === 'fill' && fill !== undefined) {
            const open = paths.some(isLeftOpen);
            const region = fillRegion(paths, place.matrix, style.fillRule, place.clip);
            add(drawing, element, place, region, fill, style.fillOpacity, open);
        } else if (layer === 'stroke' && stroke !== undefined) {
            const region = strokeRegion(drawing, element, paths, style, place);
            add(drawing, element, place, region, stroke, style.strokeOpacity, false);
        }
    }
}

/** The area that flattened subpaths fill, in mm on the page, as far as it is visible. */
export function fillRegion(paths: readonly Path[], matrix: Matrix, rule: 'nonzero' | 'evenodd', clip: Clip): Region {
    const rings = paths.filter(({ points }) => points.length >= 6).map(({ points }) => transformRing(points, matrix));
    const region = unite(cutRings(rings, clip.box), rule);
    return clip.region === undefined ? region : intersect(region, clip.region);
}

function strokeRegion(drawing: Drawing, element: SvgElement, paths: readonly Path[], style: Style, place: Place): Region {
    let drawn = paths;
    if (style.dashes.some((length) => length > 0)) {
        drawn = dash(paths, style.dashes, style.dashOffset);
        if (drawn === paths) {
            const message = `The stroke of <${element.name}> has more dashes than are drawn; it is drawn solid.`;
            drawing.problems.add('too-large', element.name, message, element.offset);
        }
    }
    const { linecap: cap, linejoin: join, miterLimit } = style;
    const { matrix } = place;
    const wide = widen(drawn, { width: style.strokeWidth, cap, join, miterLimit, matrix }, drawing.tolerance);
    const wedges = innerWedges(drawn, style.strokeWidth / 2, bendFor(drawing, style, place) * 1.001);
    const whole = wedges.length === 0 ? wide : union([wide, unite(wedges.map((ring) => transformRing(ring, matrix)))]);
    return visible(whole, place.clip);
}

function visible(region: Region, { box, region: window }: Clip): Region {
    const around = bounds(region);
    if (around === undefined) return emptyRegion;
    const inside = around.minX >= box.minX && around.minY >= box.minY && around.maxX <= box.maxX && around.maxY <= box.maxY;
    const cut = inside ? region : intersect(region, regionOfBox(box));
    return window === undefined ? cut : intersect(cut, window);
}

function add(
    drawing: Drawing,
    element: SvgElement,
    place: Place,
    region: Region,
    colour: Colour,
    paintOpacity: number,
    open: boolean,
): void {
    const opacity = colour.alpha * paintOpacity * place.opacity;
    if (region.rings.length === 0 || !(opacity > 0)) return;
    if (open) {
        const message = `A filled <${element.name}> is left open; the fill closes it with a straight line.`;
        drawing.problems.add('open-path', element.name, message, element.offset);
    }
    drawing.parts.push({
        ids: place.ids,
        classes: place.classes,
        darkness: darknessOf(colour) * opacity,
        opacity,
        colour: hexOverWhite(colour, opacity),
        region,
        open,
    });
}

/** An open subpath that encloses something and does not end where it began. */
function isLeftOpen({ points, closed }: Path): boolean {
    const last = points.length - 2;
    return !closed && last >= 4 && (points[0] !== points[last] || points[1] !== points[last + 1]);
}

/** The turn between chords at which an outline at half the stroke's width strays by the tolerance: r·θ²/8. */
function bendFor(drawing: Drawing, style: Style, place: Place): number {
    const radius = (style.strokeWidth / 2) * largestScale(place);
    return Math.max(0.01, Math.min(Math.PI / 4, Math.sqrt((8 * drawing.tolerance) / radius)));
}
