import { exactTurn } from './edges';
import { type AreaWork, isRunnable, type MachineJob, overtravelOf, type PathWork, type Work } from './job';
import { type Motion, moveTime, runUp } from './motion';
import type { BlankPoint } from './place';
import { eachSweep, sweepEnds } from './sweep';
import { pathTime } from './time';

/** The head's way over one pass of one work, to be looked at; further passes repeat it. */
export interface Trace {
    readonly work: Work;
    /** When its first pass begins (s), the way to its start behind it. */
    readonly start: number;
    /** One pass (s), and the way back to its start before the next. */
    readonly pass: number;
    readonly back: number;
    /** x, y (mm) and t (s since the pass began) of the places the head comes by, in order. */
    readonly points: readonly number[];
    /** For each place 1 if the head burnt on its way there. */
    readonly lit: readonly number[];
}

/**
 * The way of a job in order, with times that add up to those of timeOfJob (but for bringing the focus to
 * its heights). Where there are more than `most` places only every n-th scan line, or place of a path, is
 * told of; the times stay those of all. Empty if speeds or acceleration are none.
 */
export function traceOfJob(job: MachineJob, most = 60_000): Trace[] {
    if (!isRunnable(job)) return [];
    const { motion } = job;
    const works = job.work.filter((work) => work.passes > 0);
    const every = Math.max(1, Math.ceil(works.reduce((sum, work) => sum + countOf(work), 0) / Math.max(1, most)));
    const traces: Trace[] = [];
    let at: BlankPoint = job.origin ?? { x: 0, y: 0 };
    let time = 0;
    for (const work of works) {
        const pen = new Pen(motion);
        if (work.kind === 'area') traceArea(work, motion, every, pen);
        else tracePaths(work, motion, every, pen);
        const { first, last } = pen;
        if (first === undefined || last === undefined) continue;
        time += travel(at, first, motion);
        const back = travel(last, first, motion);
        traces.push({ work, start: time, pass: pen.time, back, points: pen.points, lit: pen.lit });
        time += pen.time * work.passes + back * (work.passes - 1);
        at = last;
    }
    return traces;
}

class Pen {
    readonly points: number[] = [];
    readonly lit: number[] = [];
    time = 0;
    first: BlankPoint | undefined;
    last: BlankPoint | undefined;

    constructor(private readonly motion: Motion) {}

    /** Goes there with the beam off, from rest to rest; `share` of the way where lines in between are left out. */
    goTo(to: BlankPoint, told: boolean, share = 1): void {
        if (this.last !== undefined) this.time += travel(this.last, to, this.motion, share) / share;
        this.first ??= to;
        this.last = to;
        if (told) this.tell(to, this.time, false);
    }

    tell({ x, y }: BlankPoint, time: number, lit: boolean): void {
        this.points.push(x, y, time);
        this.lit.push(lit ? 1 : 0);
    }
}

function countOf(work: Work): number {
    if (work.kind === 'area') return 2 * work.hatch.lines + 2 * work.hatch.segments;
    return work.paths.reduce((sum, path) => sum + path.points.length / 2, 0);
}

function travel(from: BlankPoint, to: BlankPoint, motion: Motion, share = 1): number {
    return moveTime(Math.hypot(to.x - from.x, to.y - from.y) * share, motion.topSpeed, motion.acceleration);
}

function traceArea(work: AreaWork, motion: Motion, every: number, pen: Pen): void {
    const { hatch, speed } = work;
    const over = overtravelOf(work, motion);
    const { cos, sin } = exactTurn(hatch.angle);
    eachSweep(work, motion, (sweep) => {
        const { start, end } = sweepEnds(hatch, sweep, over);
        const v = hatch.first + sweep.line * hatch.pitch;
        const place = (u: number): BlankPoint => ({ x: u * cos - v * sin, y: u * sin + v * cos });
        const told = sweep.line % every === 0;
        pen.goTo(place(start), told, 1 / hatch.every);
        const length = Math.abs(end - start);
        const whole = moveTime(length, speed, motion.acceleration) * hatch.every;
        if (told) {
            const when = (u: number): number =>
                pen.time + timeAt(Math.abs(u - start), length, speed, motion.acceleration) * hatch.every;
            for (let k = sweep.from; k < sweep.to; k++) {
                const i = sweep.backwards ? sweep.to - 1 - (k - sweep.from) : k;
                const ends = [hatch.ends[2 * i]!, hatch.ends[2 * i + 1]!];
                const [on, off] = sweep.backwards ? [ends[1]!, ends[0]!] : [ends[0]!, ends[1]!];
                pen.tell(place(on), when(on), false);
                pen.tell(place(off), when(off), true);
            }
        }
        pen.time += whole;
        pen.last = place(end);
        if (told) pen.tell(pen.last, pen.time, false);
    });
}

/** Time (s) until `gone` mm of a move from rest to rest over `length` are behind. */
function timeAt(gone: number, length: number, speed: number, acceleration: number): number {
    const ramp = Math.min(runUp(speed, acceleration), length / 2);
    const left = length - gone;
    if (gone <= ramp) return Math.sqrt((2 * Math.max(0, gone)) / acceleration);
    if (left <= ramp) return moveTime(length, speed, acceleration) - Math.sqrt((2 * Math.max(0, left)) / acceleration);
    return Math.sqrt((2 * ramp) / acceleration) + (gone - ramp) / speed;
}

function tracePaths(work: PathWork, motion: Motion, every: number, pen: Pen): void {
    for (const path of work.paths) {
        const { points, lit } = path;
        const last = points.length / 2 - 1;
        if (last < 1) continue;
        pen.goTo({ x: points[0]!, y: points[1]! }, true);
        const began = pen.time;
        const { time } = pathTime(path, work.speed, motion.acceleration, (piece, gone) => {
            const to = piece + 1;
            const turns = lit !== undefined && lit[piece] !== lit[piece + 1];
            if (to % every !== 0 && to !== last && !turns) return;
            pen.tell({ x: points[2 * to]!, y: points[2 * to + 1]! }, began + gone, lit === undefined || lit[piece] === 1);
        });
        pen.time = began + time;
        pen.last = { x: points[2 * last]!, y: points[2 * last + 1]! };
    }
}
