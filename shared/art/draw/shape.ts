import { boundsOfRings } from '../../geometry/measure';
import type { Region } from '../../geometry/region';
import { transformRing } from '../../geometry/transform';
import type { Path } from '../../geometry/widen';
import { phrase } from '../../recipe/phrase';
import { type Colour, darknessOf } from '../style/colour';
import type { Computed } from '../style/computed';
import type { SvgElement } from '../xml/tree';
import { isEmptyBox } from './clip-box';
import type { Drawing, DrawnPart, Place } from './drawing';
import { averageOf, shadingOf } from './gradient';
import { drawMarkers } from './markers';
import { largestScale, outlineOf } from './outline';
import { type ResolvedPaint, resolvePaint } from './paint';
import { partsOfPattern } from './pattern';
import { bendFor, fillRegion, strokeRegion } from './shape-regions';
import type { Visitor } from './walk';

/** Makes what paints onto a drawing. */
export type Painter = (drawing: Drawing) => Visitor;

/** Draws a shape's fill, stroke and markers, in the order in which they are painted. */
export function drawShape(
    drawing: Drawing,
    element: SvgElement,
    computed: Computed,
    place: Place,
    visitor: Visitor,
    paint: Painter,
): void {
    const { style } = computed;
    if (!style.visible || isEmptyBox(place.clip.box)) return;
    const fill = element.name === 'line' ? undefined : resolvePaint(drawing, style.fill, style, element, place);
    const stroke = style.strokeWidth > 0 ? resolvePaint(drawing, style.stroke, style, element, place) : undefined;
    const bend = stroke === undefined ? Math.PI : bendFor(drawing, style, place);
    const painted = fill !== undefined || stroke !== undefined;
    const paths = painted ? outlineOf(drawing, element, computed, place, bend) : [];
    if (isOffPage(drawing, paths, stroke === undefined ? 0 : style.strokeWidth, place)) {
        drawing.problems.add(
            'off-page',
            element.name,
            phrase`<${element.name}> lies off the page and is left out.`,
            element.offset,
        );
        return;
    }
    for (const layer of style.paintOrder) {
        if (layer === 'fill' && fill !== undefined) {
            const open = paths.some(isLeftOpen);
            const region = fillRegion(drawing, element, paths, style.fillRule, place);
            addPainted(drawing, element, place, { region, paint: fill, opacity: style.fillOpacity, open }, paint);
        } else if (layer === 'stroke' && stroke !== undefined) {
            const region = strokeRegion(drawing, element, paths, style, place);
            addPainted(drawing, element, place, { region, paint: stroke, opacity: style.strokeOpacity, open: false }, paint);
        } else if (layer === 'markers') {
            drawMarkers(drawing, element, computed, place, visitor);
        }
    }
}

interface Painted {
    readonly region: Region;
    readonly paint: ResolvedPaint;
    readonly opacity: number;
    readonly open: boolean;
}

/** Adds a painted area as a part; one of a pattern as the parts that are seen of it. */
function addPainted(drawing: Drawing, element: SvgElement, place: Place, painted: Painted, draw: Painter): void {
    const { region, paint, opacity, open } = painted;
    if (region.rings.length === 0 || !(opacity > 0)) return;
    if (open) {
        const message = phrase`A filled <${element.name}> is left open; the fill closes it with a straight line.`;
        drawing.problems.add('open-path', element.name, message, element.offset);
    }
    if (paint.kind === 'colour') {
        drawing.parts.push(...partOf(place, painted, paint.colour));
    } else if (paint.kind === 'pattern') {
        const on = {
            pattern: paint.server,
            element: paint.element,
            place: { ...paint.place, ...seenAs(place) },
            region,
            opacity,
        };
        drawing.parts.push(...partsOfPattern(drawing, on, draw));
    } else {
        const shading = shadingOf(drawing, paint.server, paint.element, paint.place, opacity);
        if (shading === undefined) return;
        if ('alpha' in shading) {
            drawing.parts.push(...partOf(place, painted, shading));
            return;
        }
        const mean = averageOf(drawing, paint.server, paint.place);
        if (mean === undefined) return;
        drawing.parts.push(...partOf(place, painted, mean).map((part) => ({ ...part, shading })));
    }
}

/** By what a part is picked, and through what it is seen: that of the shape that is painted, whoever's paint it is. */
function seenAs({ ids, classes, groups, within, depth }: Place) {
    return { ids, classes, groups, within, depth };
}

function partOf(place: Place, { region, opacity: paintOpacity, open }: Painted, colour: Colour): DrawnPart[] {
    const opacity = colour.alpha * paintOpacity;
    if (!(opacity > 0)) return [];
    const { ids, classes, groups } = place;
    const darkness = darknessOf(colour) * opacity;
    const part = { ids, classes, darkness, opacity, paint: colour, region, open };
    return [groups.length === 0 ? part : { ...part, groups }];
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
