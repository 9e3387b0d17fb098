import { exactTurn } from '../toolpath/edges';
import { type AreaWork, isRunnable, type Job, overtravelOf, type PathWork, type Work } from '../toolpath/job';
import { eachSweep, sweepEnds } from '../toolpath/sweep';

/*
 * Machine files in RS-274/NGC as Kramer, Proctor and Messina describe it (The NIST RS274NGC Interpreter,
 * Version 3, NISTIR 6556, 2000): G21 millimetres, G90 absolute, G94 feed in units a minute, M3 and M5 as
 * beam ready and off, M7 and M9 as air on and off, lines of at most 256 characters, comments in ( ).
 * S as beam power lies outside of that standard, so a comment says what it means.
 */

export interface Rs274Options {
    /** Comment lines for the head of the file. */
    readonly comments: readonly string[];
    /** Power (W) that the highest S stands for. */
    readonly fullPower: number;
    /** Highest S (default 1000). */
    readonly fullScale?: number;
    /** Height of the blank (mm): its lower left corner becomes the origin, with Y upwards as machines have it. */
    readonly height: number;
}

export type Rs274Problem = 'not-finite' | 'power-over' | 'incomplete-hatch' | 'too-long';

export type Rs274Result = { readonly text: string } | { readonly problem: Rs274Problem };

const LONGEST = 256;
const MOST_LINES = 8_000_000;

/** The machine file of a job, or why there is none. The same job gives the same text, byte for byte. */
export function rs274(job: Job, options: Rs274Options): Rs274Result {
    const problem = problemOf(job, options);
    if (problem !== undefined) return { problem };
    const out = new Writer(options);
    out.head();
    for (const work of job.work) {
        out.comment(work.name);
        out.air(work.air === true);
        for (let pass = 0; pass < work.passes; pass++) {
            if (work.passes > 1) out.comment(`pass ${pass + 1} of ${work.passes}`);
            if (work.focus !== undefined) out.focus(work.focus[pass] ?? 0);
            if (work.kind === 'area') writeArea(out, work, job);
            else writePaths(out, work);
            if (out.failed !== undefined) return { problem: out.failed };
        }
    }
    out.foot(job.work.some((work) => work.focus?.some((depth) => depth !== 0)));
    return out.failed === undefined ? { text: out.text() } : { problem: out.failed };
}

function problemOf(job: Job, { fullPower, fullScale = 1000, height }: Rs274Options): Rs274Problem | undefined {
    const usable = (value: number, most: number): boolean => value > 0 && value <= most;
    if (!usable(fullPower, 1e6) || !usable(fullScale, 1e6) || !(Math.abs(height) <= 1e6)) return 'not-finite';
    if (!isRunnable(job)) return 'not-finite';
    for (const work of job.work) {
        if (work.power > fullPower * (1 + 1e-9)) return 'power-over';
        if (work.kind === 'area' && work.hatch.every !== 1) return 'incomplete-hatch';
    }
    const lines = job.work.reduce((sum, work) => sum + work.passes * linesOf(work), 0);
    return lines > MOST_LINES ? 'too-long' : undefined;
}

function linesOf(work: Work): number {
    return work.kind === 'area'
        ? 2 * work.hatch.segments + 2 * work.hatch.lines
        : work.paths.reduce((sum, path) => sum + path.points.length / 2, 0);
}

function writeArea(out: Writer, work: AreaWork, job: Job): void {
    const { hatch } = work;
    const overtravel = overtravelOf(work, job.motion);
    const { cos, sin } = exactTurn(hatch.angle);
    eachSweep(work, job.motion, (sweep) => {
        const v = hatch.first + sweep.line * hatch.pitch;
        const to = (u: number, power: number): void => out.feed(u * cos - v * sin, u * sin + v * cos, work.speed, power);
        const { start, end } = sweepEnds(hatch, sweep, overtravel);
        out.rapid(start * cos - v * sin, start * sin + v * cos);
        const count = sweep.to - sweep.from;
        for (let k = 0; k < count; k++) {
            const segment = sweep.backwards ? sweep.to - 1 - k : sweep.from + k;
            const [low, high] = [hatch.ends[2 * segment]!, hatch.ends[2 * segment + 1]!];
            to(sweep.backwards ? high : low, 0);
            to(sweep.backwards ? low : high, work.power);
        }
        to(end, 0);
    });
}

function writePaths(out: Writer, work: PathWork): void {
    for (const { points, lit } of work.paths) {
        if (points.length < 4) continue;
        out.rapid(points[0]!, points[1]!);
        for (let i = 2; i + 1 < points.length; i += 2) {
            out.feed(points[i]!, points[i + 1]!, work.speed, lit === undefined || lit[i / 2 - 1] === 1 ? work.power : 0);
        }
    }
}

/** Collects lines, and says only what has changed. */
class Writer {
    private readonly lines: string[] = [];
    private readonly scale: number;
    private readonly full: number;
    private motion = '';
    private x = '';
    private y = '';
    private power = '';
    private speed = '';
    private airOn = false;
    failed: Rs274Problem | undefined;

    constructor(private readonly options: Rs274Options) {
        this.full = options.fullScale ?? 1000;
        this.scale = this.full / options.fullPower;
    }

    head(): void {
        for (const comment of this.options.comments) this.comment(comment);
        this.comment('millimetres; origin at the lower left corner of the blank, X to the right, Y away from you');
        this.comment(
            `S is the power of the beam: S 0 to ${decimal(this.full, 0)} stands for 0 to ${decimal(this.options.fullPower, 3)} W; F in mm a minute`,
        );
        this.comment('Z 0 has the focus on the face of the blank, Z below 0 in the wood');
        this.lines.push('G21', 'G90', 'G94', 'G0', 'S0', 'M3');
        this.motion = 'G0';
        this.power = 'S0';
    }

    foot(zMoved: boolean): void {
        this.power0();
        this.lines.push('M5');
        this.air(false);
        if (zMoved) this.lines.push('G0 Z0');
        this.lines.push('G0 X0 Y0', 'M2');
    }

    /** Only plain printable characters, and no bracket inside of the brackets. */
    comment(text: string): void {
        const plain = text
            .normalize('NFKD')
            .replace(/[()]/g, ' ')
            .replace(/[^\x20-\x7e]/g, '')
            .slice(0, LONGEST - 2);
        this.lines.push(`(${plain})`);
    }

    air(on: boolean): void {
        if (on !== this.airOn) this.lines.push(on ? 'M7' : 'M9');
        this.airOn = on;
    }

    focus(depth: number): void {
        this.power0();
        this.lines.push(`G0 Z${decimal(-depth, 3)}`);
        this.motion = 'G0';
    }

    private power0(): void {
        if (this.power !== 'S0') this.lines.push('S0');
        this.power = 'S0';
    }

    rapid(x: number, y: number): void {
        this.power0();
        this.move('G0', x, y, '', '');
    }

    feed(x: number, y: number, speed: number, power: number): void {
        this.move('G1', x, y, `F${decimal(speed * 60, 3)}`, `S${decimal(power * this.scale, 2)}`);
    }

    private move(motion: string, x: number, y: number, speed: string, power: string): void {
        if (!(Math.abs(x) < 1e6 && Math.abs(y) < 1e6)) {
            this.failed = 'not-finite';
            return;
        }
        const toX = `X${decimal(x, 4)}`;
        const toY = `Y${decimal(this.options.height - y, 4)}`;
        if (toX === this.x && toY === this.y) return;
        let line = motion === this.motion ? '' : motion;
        if (toX !== this.x) line += ` ${toX}`;
        if (toY !== this.y) line += ` ${toY}`;
        if (speed !== '' && speed !== this.speed) line += ` ${speed}`;
        if (power !== '' && power !== this.power) line += ` ${power}`;
        this.lines.push(line.trimStart());
        this.motion = motion;
        this.x = toX;
        this.y = toY;
        if (speed !== '') this.speed = speed;
        if (power !== '') this.power = power;
    }

    text(): string {
        return `${this.lines.join('\n')}\n`;
    }
}

/** A number as RS-274 wants it: no exponent, no minus before zero, no needless noughts. */
function decimal(value: number, places: number): string {
    const text = value.toFixed(places);
    const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
    return short === '-0' ? '0' : short;
}
