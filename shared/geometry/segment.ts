/** Square of the distance from a point to the segment from a to b. */
export function squareToSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
    const dx = bx - ax;
    const dy = by - ay;
    const length = dx * dx + dy * dy;
    const t = length > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length)) : 0;
    const px = x - ax - t * dx;
    const py = y - ay - t * dy;
    return px * px + py * py;
}
