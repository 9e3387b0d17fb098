import type { Region } from '../../geometry/region';
import type { Paint } from '../style/properties';
import type { SvgElement } from '../xml/tree';
import type { Drawing, Place } from './drawing';
import { rampOf } from './gradient';
import { gradientShape } from './gradient-shape';
import { resolve } from './reference';
import { type Shade, shadesOf } from './shades';

/**
 * The shades of a region painted with a gradient, so that it burns where it is seen to be darker than
 * the threshold; undefined where the paint is none, or where its average has to do: what is looked through
 * would be asked for what lies below it once for every shade. Says so either way.
 */
export function shadesOfPaint(
    drawing: Drawing,
    element: SvgElement,
    place: Place,
    region: Region,
    paint: Paint,
    opacity: number,
): readonly Shade[] | undefined {
    if (paint.kind !== 'server' || region.rings.length === 0) return undefined;
    const gradient = resolve(paint.reference, drawing.tree, drawing.problems, element);
    if (gradient?.name !== 'linearGradient' && gradient?.name !== 'radialGradient') return undefined;
    const ramp = rampOf(drawing, gradient, place);
    if (ramp === undefined) return undefined;
    const { colourAt } = ramp;
    const shape =
        ramp.opaque && opacity >= 1 && drawing.shades.left > 0 ? gradientShape(drawing, gradient, element, place) : undefined;
    const shades = shape === undefined ? undefined : shadesOf(region, shape, colourAt, drawing.shades);
    const message =
        shades === undefined
            ? 'A gradient is taken as its average darkness: a burn has one depth.'
            : 'A gradient burns whole where it is darker than the threshold, and not at all elsewhere: a burn has one depth.';
    drawing.problems.add('unsupported', gradient.name, message, gradient.offset);
    return shades;
}
