import { emptyRegion, type Region } from './region';

/** How far, in mm, a flattened curve may stray from the true one, unless told otherwise. */
export const flatteningTolerance = 0.005;

/**
 * The angle in rad that one chord of a circle may span and stay within `tolerance` of the arc:
 * its sagitta is r·(1 − cos(angle/2)). Never more than a quarter turn, nor less than a 65 536th of one.
 */
export function chordAngle(radius: number, tolerance: number): number {
    const sagitta = usableTolerance(tolerance) / radius;
    return Math.max(sagitta >= 1 - Math.SQRT1_2 ? Math.PI / 2 : 2 * Math.acos(1 - sagitta), Math.PI / 2 / 65_536);
}

/** The tolerance itself, or the usual one for what is not a positive number. */
export function usableTolerance(tolerance: number): number {
    return tolerance > 0 && Number.isFinite(tolerance) ? tolerance : flatteningTolerance;
}

/** A disc, in mm. Its points lie on the circle, a multiple of four of them, so that it keeps the circle's symmetry about both axes. */
export function circle(cx: number, cy: number, diameter: number, tolerance = flatteningTolerance): Region {
    const radius = diameter / 2;
    if (!(radius > 0) || !Number.isFinite(radius + cx + cy)) return emptyRegion;
    const count = 4 * Math.ceil(Math.PI / 2 / chordAngle(radius, tolerance));
    const ring = new Float64Array(2 * count);
    for (let i = 0; i < count; i++) {
        const angle = (2 * Math.PI * i) / count;
        ring[2 * i] = cx + radius * Math.cos(angle);
        ring[2 * i + 1] = cy + radius * Math.sin(angle);
    }
    return { rings: [ring] };
}

/** A rectangle by its top left corner, in mm. Empty unless both sides are positive. */
export function rectangle(x: number, y: number, width: number, height: number): Region {
    if (!(width > 0 && height > 0) || !Number.isFinite(x + y + width + height)) return emptyRegion;
    return { rings: [Float64Array.of(x, y, x + width, y, x + width, y + height, x, y + height)] };
}
