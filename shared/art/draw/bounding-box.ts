import { boundsOfRings } from '../../geometry/measure';
import type { Bounds } from '../../geometry/region';
import { invert, multiply, transformRing } from '../../geometry/transform';
import type { SvgElement } from '../xml/tree';
import type { Drawing, Place } from './drawing';
import { outlineOf } from './outline';
import { type Visitor, walk } from './walk';

/**
 * The box around an element's shapes without their strokes, in the element's own user units: what
 * `objectBoundingBox` means (SVG 2, section 8.10). `place` includes the element's own transform.
 */
export function boundingBox(drawing: Drawing, element: SvgElement, place: Place): Bounds | undefined {
    const back = invert(place.matrix);
    if (back === undefined) return undefined;
    let box: Bounds | undefined;
    const visitor: Visitor = {
        shape: (shape, computed, at) => {
            const toElement = multiply(back, at.matrix);
            const rings = outlineOf(drawing, shape, computed, at, Math.PI).map(({ points }) => transformRing(points, toElement));
            const around = boundsOfRings(rings);
            if (around === undefined) return;
            box ??= around;
            box = {
                minX: Math.min(box.minX, around.minX),
                minY: Math.min(box.minY, around.minY),
                maxX: Math.max(box.maxX, around.maxX),
                maxY: Math.max(box.maxY, around.maxY),
            };
        },
        around: (inner, _computed, at, draw) => draw(inner === element ? { ...at, matrix: place.matrix } : at),
        other: () => {},
    };
    // The walk adds the element's transform itself, so the place given to it only has to be undone above.
    walk(drawing, element, place, visitor);
    return box;
}
