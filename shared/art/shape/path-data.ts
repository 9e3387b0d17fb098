import { NumberScanner } from './number-scanner';
import type { PathSink } from './sink';

/** Numbers that each command takes at a time. */
const counts: Readonly<Record<string, number>> = { m: 2, l: 2, h: 1, v: 1, c: 6, s: 4, q: 4, t: 2, a: 7, z: 0 };

/**
 * Reads SVG path data (SVG 2, section 9.3) straight into a sink, without a list of segments in
 * between. As the standard wants, what stands before an error is kept; the answer is the offset
 * of the error in `text`, or undefined.
 *
 * The libraries for it take a time that grows with the square of a command's numbers, or keep
 * nothing of a broken path.
 */
export function readPathData(text: string, sink: PathSink): number | undefined {
    const scan = new NumberScanner(text);
    const pen = new Pen(sink);
    const numbers: number[] = [];
    scan.space();
    for (let first = true; !scan.done(); first = false) {
        const start = scan.index;
        const command = text[start]!;
        const lower = command.toLowerCase();
        const count = counts[lower];
        if (count === undefined || (first && lower !== 'm')) return start;
        scan.index++;
        scan.space();
        if (count === 0) {
            pen.draw('z', false, numbers);
            continue;
        }
        let letter = lower;
        for (let again = false; !again || scan.more(); again = true) {
            const at = scan.index;
            if (!read(scan, lower === 'a', count, again, numbers)) return at;
            pen.draw(letter, command === lower, numbers);
            // Further pairs after a moveto are linetos.
            if (letter === 'm') letter = 'l';
        }
    }
    return undefined;
}

/** Reads one command's numbers; false at anything else. */
function read(scan: NumberScanner, arc: boolean, count: number, again: boolean, into: number[]): boolean {
    for (let i = 0; i < count; i++) {
        if (again || i > 0) scan.comma();
        const value = arc && (i === 3 || i === 4) ? scan.flag() : scan.number();
        if (value === undefined) return false;
        into[i] = value;
        scan.space();
    }
    return true;
}

/** Turns relative and shorthand commands into plain ones. */
class Pen {
    private x = 0;
    private y = 0;
    private startX = 0;
    private startY = 0;
    /** The control point that S and T reflect, and the kind of curve it belongs to. */
    private controlX = 0;
    private controlY = 0;
    private control: 'cubic' | 'quadratic' | undefined;
    /** After a closing, a drawing command begins a new subpath at the same start. */
    private closed = false;

    constructor(private readonly sink: PathSink) {}

    draw(letter: string, relative: boolean, n: readonly number[]): void {
        const dx = relative ? this.x : 0;
        const dy = relative ? this.y : 0;
        if (letter === 'm') {
            this.closed = false;
            this.startX = dx + n[0]!;
            this.startY = dy + n[1]!;
            this.sink.moveTo(this.startX, this.startY);
            this.arrive(this.startX, this.startY);
            return;
        }
        if (letter === 'z') {
            if (!this.closed) this.sink.close();
            this.closed = true;
            this.arrive(this.startX, this.startY);
            return;
        }
        if (this.closed) this.sink.moveTo(this.startX, this.startY);
        this.closed = false;
        switch (letter) {
            case 'l':
                this.line(dx + n[0]!, dy + n[1]!);
                break;
            case 'h':
                this.line(dx + n[0]!, this.y);
                break;
            case 'v':
                this.line(this.x, dy + n[0]!);
                break;
            case 'c':
                this.cubic(dx + n[0]!, dy + n[1]!, dx + n[2]!, dy + n[3]!, dx + n[4]!, dy + n[5]!);
                break;
            case 's':
                this.reflect('cubic');
                this.cubic(this.controlX, this.controlY, dx + n[0]!, dy + n[1]!, dx + n[2]!, dy + n[3]!);
                break;
            case 'q':
                this.quadratic(dx + n[0]!, dy + n[1]!, dx + n[2]!, dy + n[3]!);
                break;
            case 't':
                this.reflect('quadratic');
                this.quadratic(this.controlX, this.controlY, dx + n[0]!, dy + n[1]!);
                break;
            default:
                this.sink.arcTo(n[0]!, n[1]!, n[2]!, n[3] !== 0, n[4] !== 0, dx + n[5]!, dy + n[6]!);
                this.arrive(dx + n[5]!, dy + n[6]!);
        }
    }

    /** Turns the last control point about where the pen is; after a curve of another kind there is none. */
    private reflect(kind: 'cubic' | 'quadratic'): void {
        const known = this.control === kind;
        this.controlX = known ? 2 * this.x - this.controlX : this.x;
        this.controlY = known ? 2 * this.y - this.controlY : this.y;
    }

    private line(x: number, y: number): void {
        this.sink.lineTo(x, y);
        this.arrive(x, y);
    }

    private cubic(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
        this.sink.cubicTo(x1, y1, x2, y2, x, y);
        this.arrive(x, y);
        this.control = 'cubic';
        this.controlX = x2;
        this.controlY = y2;
    }

    private quadratic(x1: number, y1: number, x: number, y: number): void {
        this.sink.quadTo(x1, y1, x, y);
        this.arrive(x, y);
        this.control = 'quadratic';
        this.controlX = x1;
        this.controlY = y1;
    }

    private arrive(x: number, y: number): void {
        this.x = x;
        this.y = y;
        this.control = undefined;
    }
}
