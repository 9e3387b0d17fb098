import type { ToolpathView, WayKind, WayView } from '../../../../shared/view/toolpath-view';
import type { Placing } from '../picture/zoom';
import type { Moment } from './toolpath-moment';

interface Line {
    readonly width: number;
    readonly dash: readonly number[];
    readonly opacity: number;
}

/** Kinds of way are told apart by weight and dash. Run-ups of many lines together would drown what is burnt. */
export const lines: Readonly<Record<WayKind | 'travel', Line>> = {
    scan: { width: 0.7, dash: [], opacity: 1 },
    outline: { width: 1.5, dash: [], opacity: 1 },
    cut: { width: 2.2, dash: [9, 3], opacity: 1 },
    travel: { width: 0.5, dash: [2, 4], opacity: 0.3 },
};

/** What is drawn of a toolpath: kinds of way, and the places in which the head is slower than it was set. */
export type WayShown = WayKind | 'travel' | 'slow';

/** Below so many tenths of the set speed the head counts as slow. */
export const slowBelow = 9;

/** Shades of ink up to the most: so many, so that one stroke draws all places of a shade. */
const shades = 8;
const lightest = 0.22;

/** Opacity of a dose, as a part of the most of the step; full ink where there is but one. */
export function inkOf(dose: number, { least, most }: DoseRange): number {
    if (!(most > least * 1.02)) return 1;
    return Math.max(lightest, Math.min(1, Math.round((dose / most) * shades) / shades));
}

/** J/mm2 */
export interface DoseRange {
    readonly least: number;
    readonly most: number;
}

/** The doses that the places of a step get, all passes together; undefined where nothing is burnt. */
export function doseRange({ works }: ToolpathView): DoseRange | undefined {
    let [least, most] = [Number.POSITIVE_INFINITY, 0];
    for (const work of works) {
        for (let i = 0; i < work.lit.length; i++) {
            if (work.lit[i] !== '1') continue;
            const dose = doseAt(work, i);
            if (dose < least) least = dose;
            if (dose > most) most = dose;
        }
    }
    return most > 0 ? { least, most } : undefined;
}

/** What the way to a place gets, J/mm2. */
export function doseAt({ dose, shade }: WayView, place: number): number {
    return (dose * Number(shade[place])) / 5;
}

/** How much of the burnt way the head is slow on, 0 to 1. */
export function slowShare({ works }: ToolpathView): number {
    let [slow, all] = [0, 0];
    for (const { points, lit, pace } of works) {
        for (let i = 1; i < lit.length; i++) {
            if (lit[i] !== '1') continue;
            const length = Math.hypot(points[3 * i]! - points[3 * i - 3]!, points[3 * i + 1]! - points[3 * i - 2]!);
            all += length;
            if (Number(pace[i]) < slowBelow) slow += length;
        }
    }
    return all === 0 ? 0 : slow / all;
}

export interface WaysDrawn {
    readonly ink: string;
    /** Of the places where the head is slow. */
    readonly mark: string;
    readonly range: DoseRange | undefined;
    readonly hidden: readonly WayShown[];
}

/** Draws what the head has come by at a moment, and the head where it is. One stroke a kind and shade, so that many lines stay quick. */
export function drawWays(
    pen: CanvasRenderingContext2D,
    { works }: ToolpathView,
    { places, head }: Moment,
    { ink, mark, range, hidden }: WaysDrawn,
    sheet: Placing & { readonly width: number; readonly height: number },
): void {
    const { scale, shiftX, shiftY } = sheet;
    const shows = (what: WayShown): boolean => !hidden.includes(what);
    pen.clearRect(0, 0, pen.canvas.width, pen.canvas.height);
    pen.strokeStyle = ink;
    pen.lineWidth = 1;
    pen.strokeRect(shiftX, shiftY, sheet.width * scale, sheet.height * scale);
    works.forEach((work, index) => {
        const count = places[index] ?? 0;
        if (count === 0) return;
        if (shows('travel')) stroke(pen, work, count, (i) => work.lit[i] === '0', lines.travel, sheet);
        if (!shows(work.kind)) return;
        if (shows('slow')) {
            pen.strokeStyle = mark;
            const isSlow = (i: number): boolean => work.lit[i] === '1' && Number(work.pace[i]) < slowBelow;
            stroke(pen, work, count, isSlow, { width: lines[work.kind].width + 4, dash: [], opacity: 0.45 }, sheet);
            pen.strokeStyle = ink;
        }
        for (const opacity of opacitiesOf(work, range)) {
            const isSo = (i: number): boolean => work.lit[i] === '1' && inkAt(work, i, range) === opacity;
            stroke(pen, work, count, isSo, { ...lines[work.kind], opacity }, sheet);
        }
    });
    if (head === undefined) return;
    pen.beginPath();
    pen.arc(shiftX + head.x * scale, shiftY + head.y * scale, 5, 0, 2 * Math.PI);
    pen.strokeStyle = ink;
    pen.lineWidth = 2;
    pen.stroke();
}

function inkAt(work: WayView, place: number, range: DoseRange | undefined): number {
    return range === undefined ? 1 : inkOf(doseAt(work, place), range);
}

/** The shades of a work, the lightest first. */
function opacitiesOf(work: WayView, range: DoseRange | undefined): number[] {
    const digits = new Set<string>();
    for (let i = 0; i < work.lit.length; i++) if (work.lit[i] === '1') digits.add(work.shade[i]!);
    const found = [...digits].map((digit) => (range === undefined ? 1 : inkOf((work.dose * Number(digit)) / 5, range)));
    return [...new Set(found)].sort((a, b) => a - b);
}

function stroke(
    pen: CanvasRenderingContext2D,
    { points }: WayView,
    count: number,
    isOf: (place: number) => boolean,
    line: Line,
    { scale, shiftX, shiftY }: Placing,
): void {
    pen.beginPath();
    let goesOn = false;
    for (let i = 1; i < count; i++) {
        if (!isOf(i)) {
            goesOn = false;
            continue;
        }
        // One line goes on as long as it is of a kind: dashes begin anew with each.
        if (!goesOn) pen.moveTo(shiftX + points[3 * i - 3]! * scale, shiftY + points[3 * i - 2]! * scale);
        pen.lineTo(shiftX + points[3 * i]! * scale, shiftY + points[3 * i + 1]! * scale);
        goesOn = true;
    }
    pen.globalAlpha = line.opacity;
    pen.setLineDash([...line.dash]);
    pen.lineWidth = line.width;
    pen.stroke();
    pen.setLineDash([]);
    pen.globalAlpha = 1;
}
