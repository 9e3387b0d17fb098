import { boundsOfRings } from '../../geometry/measure';
import type { Region } from '../../geometry/region';
import { transformRing } from '../../geometry/transform';
import type { Path } from '../../geometry/widen';
import { type Colour, darknessOf, hexOverWhite } from '../style/colour';
import type { Computed } from '../style/computed';
import type { Paint } from '../style/properties';
import type { SvgElement } from '../xml/tree';
import { isEmptyBox } from './clip-box';
import type { Drawing, Place } from './drawing';
import { drawMarkers } from './markers';
import { largestScale, outlineOf } from './outline';
import { colourOf } from './paint';
import { shadesOfPaint } from './shaded-paint';
import { bendFor, fillRegion, strokeRegion } from './shape-regions';
import type { Visitor } from './walk';

/** Draws a shape's fill, stroke and markers, in the order in which they are painted. */
export function drawShape(drawing: Drawing, element: SvgElement, computed: Computed, place: Place, visitor: Visitor): void {
    const { style } = computed;
    if (!style.visible || isEmptyBox(place.clip.box)) return;
    const fill = element.name === 'line' ? undefined : colourOf(drawing, style.fill, style, element, place);
    const stroke = style.strokeWidth > 0 ? colourOf(drawing, style.stroke, style, element, place) : undefined;
    const bend = stroke === undefined ? Math.PI : bendFor(drawing, style, place);
    const painted = fill !== undefined || stroke !== undefined;
    const paths = painted ? outlineOf(drawing, element, computed, place, bend) : [];
    if (isOffPage(drawing, paths, stroke === undefined ? 0 : style.strokeWidth, place)) {
        drawing.problems.add('off-page', element.name, `<${element.name}> lies off the page and is left out.`, element.offset);
        return;
    }
    for (const layer of style.paintOrder) {
        if (layer === 'fill' && fill !== undefined) {
            const open = paths.some(isLeftOpen);
            const region = fillRegion(drawing, element, paths, style.fillRule, place);
            addPainted(drawing, element, place, { region, paint: style.fill, colour: fill, opacity: style.fillOpacity, open });
        } else if (layer === 'stroke' && stroke !== undefined) {
            const region = strokeRegion(drawing, element, paths, style, place);
            const { stroke: paint, strokeOpacity: opacity } = style;
            addPainted(drawing, element, place, { region, paint, colour: stroke, opacity, open: false });
        } else if (layer === 'markers') {
            drawMarkers(drawing, element, computed, place, visitor);
        }
    }
}

interface Painted {
    readonly region: Region;
    readonly paint: Paint;
    /** The colour that the paint comes down to. */
    readonly colour: Colour;
    readonly opacity: number;
    readonly open: boolean;
}

/** Adds a painted area; one of a gradient in its shades. */
function addPainted(drawing: Drawing, element: SvgElement, place: Place, painted: Painted): void {
    const { region, paint, colour, opacity, open } = painted;
    for (const shade of shadesOfPaint(drawing, element, place, region, paint, opacity * place.opacity) ?? [{ region, colour }]) {
        add(drawing, element, place, shade.region, shade.colour, opacity, open);
    }
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

/** Whether all of a shape, with the longest corners its stroke may have, is outside the page. */
function isOffPage({ page, pixel }: Drawing, paths: readonly Path[], width: number, place: Place): boolean {
    const box = boundsOfRings(paths.map(({ points }) => transformRing(points, place.matrix)));
    if (box === undefined) return false;
    const scale = place.style.fixedStroke ? pixel : largestScale(place);
    const reach = (width / 2) * scale * Math.max(Math.SQRT2, place.style.miterLimit);
    return box.maxX + reach < 0 || box.maxY + reach < 0 || box.minX - reach > page.width || box.minY - reach > page.height;
}

/** An open subpath that encloses something and does not end where it began. */
function isLeftOpen({ points, closed }: Path): boolean {
    const last = points.length - 2;
    return !closed && last >= 4 && (points[0] !== points[last] || points[1] !== points[last + 1]);
}
