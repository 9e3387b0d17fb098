/** Where a shape's outline is sent, in user units, all coordinates absolute. */
export interface PathSink {
    moveTo(x: number, y: number): void;
    lineTo(x: number, y: number): void;
    quadTo(x1: number, y1: number, x: number, y: number): void;
    cubicTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void;
    /** `turn` is the ellipse's x-axis rotation in degrees, as SVG writes it. */
    arcTo(rx: number, ry: number, turn: number, large: boolean, sweep: boolean, x: number, y: number): void;
    close(): void;
}
