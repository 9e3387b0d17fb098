import { readNumbers } from './number-scanner';
import { readPathData } from './path-data';
import type { PathSink } from './sink';

/** A shape's attribute as written, and as a length in user units. */
export interface ShapeValues {
    text(name: string): string | undefined;
    /** Undefined if it is absent or `auto`. */
    length(name: string, axis: 'x' | 'y' | 'diagonal'): number | undefined;
    /** For a value that is broken from some place on; what stands before it is drawn. */
    broken(name: string): void;
}

const drawers: Readonly<Record<string, (values: ShapeValues, sink: PathSink) => void>> = {
    path: (values, sink) => {
        const data = values.text('d');
        if (data !== undefined && data !== 'none' && readPathData(data, sink) !== undefined) values.broken('d');
    },
    rect: (values, sink) => {
        const x = values.length('x', 'x') ?? 0;
        const y = values.length('y', 'y') ?? 0;
        const width = values.length('width', 'x') ?? 0;
        const height = values.length('height', 'y') ?? 0;
        if (!(width > 0 && height > 0)) return;
        const writtenX = radius(values.length('rx', 'x'));
        const writtenY = radius(values.length('ry', 'y'));
        const rx = Math.min(writtenX ?? writtenY ?? 0, width / 2);
        const ry = Math.min(writtenY ?? writtenX ?? 0, height / 2);
        rectangle(x, y, width, height, rx, ry, sink);
    },
    circle: (values, sink) => {
        const r = values.length('r', 'diagonal') ?? 0;
        oval(values.length('cx', 'x') ?? 0, values.length('cy', 'y') ?? 0, r, r, sink);
    },
    ellipse: (values, sink) => {
        const writtenX = radius(values.length('rx', 'x'));
        const writtenY = radius(values.length('ry', 'y'));
        const rx = writtenX ?? writtenY ?? 0;
        const ry = writtenY ?? writtenX ?? 0;
        oval(values.length('cx', 'x') ?? 0, values.length('cy', 'y') ?? 0, rx, ry, sink);
    },
    line: (values, sink) => {
        sink.moveTo(values.length('x1', 'x') ?? 0, values.length('y1', 'y') ?? 0);
        sink.lineTo(values.length('x2', 'x') ?? 0, values.length('y2', 'y') ?? 0);
    },
    polyline: (values, sink) => corners(values, sink),
    polygon: (values, sink) => {
        if (corners(values, sink)) sink.close();
    },
};

/** Elements that are drawn, by name: each sends its outline to a sink (SVG 2, chapters 9 and 10). */
export const shapes: ReadonlyMap<string, (values: ShapeValues, sink: PathSink) => void> = new Map(Object.entries(drawers));

/** A negative radius counts as not written. */
function radius(value: number | undefined): number | undefined {
    return value !== undefined && value >= 0 ? value : undefined;
}

function rectangle(x: number, y: number, width: number, height: number, rx: number, ry: number, sink: PathSink): void {
    const right = x + width;
    const bottom = y + height;
    if (!(rx > 0 && ry > 0)) {
        sink.moveTo(x, y);
        sink.lineTo(right, y);
        sink.lineTo(right, bottom);
        sink.lineTo(x, bottom);
        sink.close();
        return;
    }
    sink.moveTo(x + rx, y);
    sink.lineTo(right - rx, y);
    sink.arcTo(rx, ry, 0, false, true, right, y + ry);
    sink.lineTo(right, bottom - ry);
    sink.arcTo(rx, ry, 0, false, true, right - rx, bottom);
    sink.lineTo(x + rx, bottom);
    sink.arcTo(rx, ry, 0, false, true, x, bottom - ry);
    sink.lineTo(x, y + ry);
    sink.arcTo(rx, ry, 0, false, true, x + rx, y);
    sink.close();
}

/** In quarters from three o'clock on, clockwise as seen: where dashes begin. */
function oval(cx: number, cy: number, rx: number, ry: number, sink: PathSink): void {
    if (!(rx > 0 && ry > 0)) return;
    sink.moveTo(cx + rx, cy);
    sink.arcTo(rx, ry, 0, false, true, cx, cy + ry);
    sink.arcTo(rx, ry, 0, false, true, cx - rx, cy);
    sink.arcTo(rx, ry, 0, false, true, cx, cy - ry);
    sink.arcTo(rx, ry, 0, false, true, cx + rx, cy);
    sink.close();
}

function corners(values: ShapeValues, sink: PathSink): boolean {
    const { numbers, broken } = readNumbers(values.text('points') ?? '');
    const count = numbers.length - (numbers.length % 2);
    if (broken !== undefined || count < numbers.length) values.broken('points');
    for (let i = 0; i < count; i += 2) {
        if (i === 0) sink.moveTo(numbers[0]!, numbers[1]!);
        else sink.lineTo(numbers[i]!, numbers[i + 1]!);
    }
    return count > 0;
}
