import type { ToolpathView, WayKind, WayView } from '../../../../shared/view/toolpath-view';
import type { Placing } from '../picture/zoom';
import type { Moment } from './toolpath-moment';

interface Line {
    readonly width: number;
    readonly dash: readonly number[];
    readonly opacity: number;
}

/** One ink for all: kinds of way are told apart by weight and dash. Run-ups of many lines together would drown what is burnt. */
export const lines: Readonly<Record<WayKind | 'travel', Line>> = {
    scan: { width: 0.7, dash: [], opacity: 0.55 },
    outline: { width: 1.5, dash: [], opacity: 1 },
    cut: { width: 2.2, dash: [9, 3], opacity: 1 },
    travel: { width: 0.5, dash: [2, 4], opacity: 0.3 },
};

/** Draws what the head has come by at a moment, and the head where it is. One stroke a kind, so that many lines stay quick. */
export function drawWays(
    pen: CanvasRenderingContext2D,
    { works }: ToolpathView,
    { places, head }: Moment,
    ink: string,
    sheet: Placing & { readonly width: number; readonly height: number },
): void {
    const { scale, shiftX, shiftY } = sheet;
    pen.clearRect(0, 0, pen.canvas.width, pen.canvas.height);
    pen.strokeStyle = ink;
    pen.lineWidth = 1;
    pen.strokeRect(shiftX, shiftY, sheet.width * scale, sheet.height * scale);
    works.forEach((work, index) => {
        const count = places[index] ?? 0;
        if (count === 0) return;
        stroke(pen, work, count, '0', lines.travel, sheet);
        stroke(pen, work, count, '1', lines[work.kind], sheet);
    });
    if (head === undefined) return;
    pen.beginPath();
    pen.arc(shiftX + head.x * scale, shiftY + head.y * scale, 5, 0, 2 * Math.PI);
    pen.strokeStyle = ink;
    pen.lineWidth = 2;
    pen.stroke();
}

function stroke(
    pen: CanvasRenderingContext2D,
    { points, lit }: WayView,
    count: number,
    which: '0' | '1',
    line: Line,
    { scale, shiftX, shiftY }: Placing,
): void {
    pen.beginPath();
    for (let i = 1; i < count; i++) {
        if (lit[i] !== which) continue;
        // One line goes on as long as it is of a kind: dashes begin anew with each.
        if (i === 1 || lit[i - 1] !== which) pen.moveTo(shiftX + points[3 * i - 3]! * scale, shiftY + points[3 * i - 2]! * scale);
        pen.lineTo(shiftX + points[3 * i]! * scale, shiftY + points[3 * i + 1]! * scale);
    }
    pen.globalAlpha = line.opacity;
    pen.setLineDash([...line.dash]);
    pen.lineWidth = line.width;
    pen.stroke();
    pen.setLineDash([]);
    pen.globalAlpha = 1;
}
