/** An elliptical arc by its centre: point(t) = centre + R(turn)·(rx·cos t, ry·sin t), t from `start` through `sweep`; rad. */
export interface CentreArc {
    readonly cx: number;
    readonly cy: number;
    readonly rx: number;
    readonly ry: number;
    readonly turn: number;
    readonly start: number;
    readonly sweep: number;
}

/**
 * SVG 1.1, appendix F.6.5 and F.6.6: from end points and flags to the centre, radii that are too
 * small grown until they reach. `turn` in rad. Undefined where the standard draws a straight line
 * (a radius of zero) or nothing (no distance), or one beyond what numbers can tell.
 */
export function centreOf(
    x1: number,
    y1: number,
    radiusX: number,
    radiusY: number,
    turn: number,
    large: boolean,
    sweep: boolean,
    x2: number,
    y2: number,
): CentreArc | undefined {
    let rx = Math.abs(radiusX);
    let ry = Math.abs(radiusY);
    if (!(rx > 0 && ry > 0) || (x1 === x2 && y1 === y2)) return undefined;
    const cos = Math.cos(turn);
    const sin = Math.sin(turn);
    const dx = (x1 - x2) / 2;
    const dy = (y1 - y2) / 2;
    // F.6.5.1, in units of the radii: far smaller numbers, so that nothing overflows.
    let ux = (cos * dx + sin * dy) / rx;
    let uy = (cos * dy - sin * dx) / ry;
    const lambda = ux * ux + uy * uy;
    if (lambda > 1) {
        const grown = Math.sqrt(lambda);
        rx *= grown;
        ry *= grown;
        ux /= grown;
        uy /= grown;
    }
    // F.6.5.2 with Λ = ux² + uy²: the root's argument is (1 − Λ)/Λ.
    const square = ux * ux + uy * uy;
    const root = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, (1 - square) / square));
    if (!Number.isFinite(root)) return undefined;
    const centreX = root * uy;
    const centreY = -root * ux;
    const start = Math.atan2(uy - centreY, ux - centreX);
    let delta = Math.atan2(-uy - centreY, -ux - centreX) - start;
    if (sweep && delta < 0) delta += 2 * Math.PI;
    if (!sweep && delta > 0) delta -= 2 * Math.PI;
    return {
        cx: cos * rx * centreX - sin * ry * centreY + (x1 + x2) / 2,
        cy: sin * rx * centreX + cos * ry * centreY + (y1 + y2) / 2,
        rx,
        ry,
        turn,
        start,
        sweep: delta,
    };
}
