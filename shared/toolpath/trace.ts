import { exactTurn } from './edges';
import { inSteps } from './held-speed';
import { type AreaWork, isRunnable, type MachineJob, overtravelOf, type PathWork, type Work } from './job';
import { type Motion, moveTime, runUp } from './motion';
import type { Path } from './path';
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
    /** For each place how fast the head came there burning, as a part of the set speed (at most 1); 1 where it travelled. */
    readonly pace: readonly number[];
    /** For each place the part of the set power that it burnt with on its way there; 1 where it travelled. */
    readonly share: readonly number[];
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
        const { points, lit, pace, share } = pen;
        traces.push({ work, start: time, pass: pen.time, back, points, lit, pace, share });
        time += pen.time * work.passes + back * (work.passes - 1);
        at = last;
    }
    return traces;
}

class Pen {
    readonly points: number[] = [];
    readonly lit: number[] = [];
    readonly pace: number[] = [];
    readonly share: number[] = [];
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

    /** @param pace part of the set speed, of a way that burns, and `share` of the set power */
    tell({ x, y }: BlankPoint, time: number, lit: boolean, pace = 1, share = 1): void {
        this.points.push(x, y, time);
        this.lit.push(lit ? 1 : 0);
        this.pace.push(lit ? Math.min(1, pace) : 1);
        this.share.push(lit ? share : 1);
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
                const even = (Math.abs(off - on) / speed) * hatch.every;
                pen.tell(place(off), when(off), true, even / Math.max(when(off) - when(on), 1e-12));
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

/** The same way with more places on it. */
function stepped(path: Path, { speed }: PathWork, { acceleration }: Motion): Path {
    const { points, of } = inSteps(path, speed, acceleration);
    return path.lit === undefined ? { points } : { points, lit: Uint8Array.from(of, (piece) => path.lit![piece]!) };
}

function tracePaths(work: PathWork, motion: Motion, every: number, pen: Pen): void {
    for (const drawn of work.paths) {
        // Cut into steps where the speed changes, so that it is seen where; a path whose power follows the speed has them already.
        const path = drawn.share !== undefined || every > 1 || drawn.points.length < 4 ? drawn : stepped(drawn, work, motion);
        const { points, lit } = path;
        const last = points.length / 2 - 1;
        if (last < 1) continue;
        pen.goTo({ x: points[0]!, y: points[1]! }, true);
        const began = pen.time;
        // More places are more roundings: the path keeps its own time.
        const whole = pathTime(drawn, work.speed, motion.acceleration).time;
        const scale = path === drawn ? 1 : whole / pathTime(path, work.speed, motion.acceleration).time;
        let before = 0;
        pathTime(path, work.speed, motion.acceleration, (piece, gone) => {
            const even = Math.hypot(points[2 * piece + 2]! - points[2 * piece]!, points[2 * piece + 3]! - points[2 * piece + 1]!);
            const pace = even / work.speed / Math.max(gone - before, 1e-12);
            before = gone;
            const to = piece + 1;
            const turns = lit !== undefined && lit[piece] !== lit[piece + 1];
            if (to % every !== 0 && to !== last && !turns) return;
            const on = lit === undefined || lit[piece] === 1;
            pen.tell({ x: points[2 * to]!, y: points[2 * to + 1]! }, began + gone * scale, on, pace, path.share?.[piece] ?? 1);
        });
        pen.time = began + whole;
        pen.last = { x: points[2 * last]!, y: points[2 * last + 1]! };
    }
}
