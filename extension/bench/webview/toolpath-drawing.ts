import type { ToolpathView, WayKind, WayView } from '../../../shared/view/toolpath-view';
import type { Moment } from './toolpath-moment';
import type { Placing } from './zoom';

/** A colour for each kind of way, and for the blank's edge. */
export type Inks = Readonly<Record<WayKind | 'travel' | 'edge', string>>;

const widths: Readonly<Record<WayKind | 'travel', number>> = { scan: 0.7, outline: 1.4, cut: 2, travel: 0.5 };

/** Draws what the head has come by at a moment, and the head where it is. One stroke a kind, so that many lines stay quick. */
export function drawWays(
    pen: CanvasRenderingContext2D,
    { works }: ToolpathView,
    { places, head }: Moment,
    inks: Inks,
    sheet: Placing & { readonly width: number; readonly height: number },
): void {
    const { scale, shiftX, shiftY } = sheet;
    pen.clearRect(0, 0, pen.canvas.width, pen.canvas.height);
    pen.strokeStyle = inks.edge;
    pen.lineWidth = 1;
    pen.strokeRect(shiftX, shiftY, sheet.width * scale, sheet.height * scale);
    works.forEach((work, index) => {
        const count = places[index] ?? 0;
        if (count === 0) return;
        stroke(pen, work, count, '0', inks.travel, widths.travel, sheet);
        stroke(pen, work, count, '1', inks[work.kind], widths[work.kind], sheet);
    });
    if (head === undefined) return;
    pen.beginPath();
    pen.arc(shiftX + head.x * scale, shiftY + head.y * scale, 5, 0, 2 * Math.PI);
    pen.strokeStyle = inks.edge;
    pen.lineWidth = 2;
    pen.stroke();
}

function stroke(
    pen: CanvasRenderingContext2D,
    { points, lit }: WayView,
    count: number,
    which: '0' | '1',
    ink: string,
    width: number,
    { scale, shiftX, shiftY }: Placing,
): void {
    pen.beginPath();
    for (let i = 1; i < count; i++) {
        if (lit[i] !== which) continue;
        pen.moveTo(shiftX + points[3 * i - 3]! * scale, shiftY + points[3 * i - 2]! * scale);
        pen.lineTo(shiftX + points[3 * i]! * scale, shiftY + points[3 * i + 1]! * scale);
    }
    // Travel lies under everything else: run-ups of many lines together would drown what is burnt.
    pen.globalAlpha = which === '0' ? 0.25 : 1;
    pen.setLineDash(which === '0' ? [3, 3] : []);
    pen.strokeStyle = ink;
    pen.lineWidth = width;
    pen.stroke();
    pen.setLineDash([]);
    pen.globalAlpha = 1;
}
