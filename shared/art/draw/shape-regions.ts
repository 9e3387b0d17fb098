import { intersect, union, unite } from '../../geometry/boolean';
import { dash } from '../../geometry/dash';
import { bounds } from '../../geometry/measure';
import { emptyRegion, type Region, tangledRegion } from '../../geometry/region';
import { identity, transformRing } from '../../geometry/transform';
import { type Path, widen } from '../../geometry/widen';
import { phrase } from '../../recipe/phrase';
import type { Style } from '../style/properties';
import type { SvgElement } from '../xml/tree';
import { regionOfBox } from './clip-box';
import { convexRing } from './convex';
import { cutRings } from './cut-rings';
import type { Clip, Drawing, Place } from './drawing';
import { innerWedges } from './inner-wedges';
import { largestScale } from './outline';
import { widenInPieces } from './tangled-stroke';

/** The area that an element's flattened subpaths fill, in mm on the page, as far as it is visible. */
export function fillRegion(
    drawing: Drawing,
    element: SvgElement,
    paths: readonly Path[],
    rule: 'nonzero' | 'evenodd',
    { matrix, clip }: Place,
): Region {
    const rings = paths.filter(({ points }) => points.length >= 6).map(({ points }) => transformRing(points, matrix));
    const cut = cutRings(rings, clip.box);
    const convex = cut.length === 1 ? convexRing(cut[0]!) : undefined;
    const region = convex === undefined ? untangled(drawing, element, unite(cut, rule)) : { rings: [convex] };
    return clip.region === undefined ? region : untangled(drawing, element, intersect(region, clip.region));
}

/** The area that an element's stroke covers, in mm on the page, as far as it is visible. */
export function strokeRegion(drawing: Drawing, element: SvgElement, paths: readonly Path[], style: Style, place: Place): Region {
    // One that does not scale is as wide on the page as it would be without any transform.
    const unit = style.fixedStroke ? drawing.pixel : 1;
    const width = style.strokeWidth * unit;
    const matrix = style.fixedStroke ? identity : place.matrix;
    const lines = style.fixedStroke
        ? paths.map(({ points, closed }) => ({ points: transformRing(points, place.matrix), closed }))
        : paths;
    let drawn = lines;
    if (style.dashes.some((length) => length > 0)) {
        const dashes = style.dashes.map((length) => length * unit);
        drawn = dash(lines, dashes, style.dashOffset * unit);
        // Each dash becomes an area of its own, with more corners than the line it is cut from.
        for (const { points } of drawn) drawing.allowance.corners -= 2 * points.length;
        if (drawn === lines || drawing.allowance.corners < 0) {
            drawn = lines;
            const message = phrase`The stroke of <${element.name}> has more dashes than are drawn; it is drawn solid.`;
            drawing.problems.add('too-large', element.name, message, element.offset);
        }
    }
    const { linecap: cap, linejoin: join, miterLimit } = style;
    const stroke = { width, cap, join, miterLimit, matrix };
    const atOnce = widen(drawn, stroke, drawing.tolerance);
    const wide = atOnce === tangledRegion ? widenInPieces(drawn, stroke, drawing.tolerance) : atOnce;
    const wedges = innerWedges(drawn, width / 2, bendFor(drawing, style, place) * 1.001);
    const inner = unite(wedges.map((ring) => transformRing(ring, matrix)));
    // The slits of a curve too tangled to be filled are not worth losing all of it.
    const whole = wide === tangledRegion || inner === tangledRegion ? wide : union([wide, inner]);
    return untangled(drawing, element, visible(untangled(drawing, element, whole), place.clip));
}

/** Says so where outlines cross too often, and leaves the shape out. */
export function untangled(drawing: Drawing, element: SvgElement, region: Region): Region {
    if (region !== tangledRegion) return region;
    const message = phrase`<${element.name}> crosses itself or its clip too often (more than some 2 million times; 100,000 for a million points) to be worked out, and is left out. Simplify it or draw its hatching wider apart.`;
    drawing.problems.add('too-large', element.name, message, element.offset);
    return emptyRegion;
}

function visible(region: Region, { box, region: window }: Clip): Region {
    const around = bounds(region);
    if (around === undefined) return emptyRegion;
    const inside = around.minX >= box.minX && around.minY >= box.minY && around.maxX <= box.maxX && around.maxY <= box.maxY;
    const cut = inside ? region : intersect(region, regionOfBox(box));
    return window === undefined ? cut : intersect(cut, window);
}

/** The turn between chords at which an outline at half the stroke's width strays by the tolerance: r·θ²/8. */
export function bendFor(drawing: Drawing, style: Style, place: Place): number {
    const radius = (style.strokeWidth / 2) * (style.fixedStroke ? drawing.pixel : largestScale(place));
    return Math.max(0.01, Math.min(Math.PI / 4, Math.sqrt((8 * drawing.tolerance) / radius)));
}
