import { exactTurn } from './edges';
import { focusTime } from './focus';
import { type AreaWork, isRunnable, type MachineJob, overtravelOf, type PathWork, type Work } from './job';
import { cornerSpeed, type Motion, moveTime, pieceTime } from './motion';
import type { Path } from './path';
import type { BlankPoint } from './place';
import { eachSweep, sweepEnds } from './sweep';

/** How far (mm) the head may leave a corner: what cornerSpeed takes for a path. */
export const CORNER_TOLERANCE = 0.01;

interface WorkTime {
    readonly name: string;
    /** All passes (s), without the way to its start. */
    readonly time: number;
    /** Of that, with the beam on (s at the set speed). */
    readonly burning: number;
    /** Energy of all passes (J), the power being on for the burnt length at the set speed. */
    readonly energy: number;
}

export interface JobTime {
    readonly total: number;
    /** Travel from the origin to the first work, from each to the next, and back to the origin (s). */
    readonly between: number;
    /** Bringing the focus to its heights and back (s). */
    readonly focusing: number;
    readonly works: readonly WorkTime[];
}

/** Time of a job by trapezoidal motion; undefined if speeds or acceleration are none. */
export function timeOfJob(job: MachineJob): JobTime | undefined {
    const { motion } = job;
    if (!isRunnable(job)) return undefined;
    const works: WorkTime[] = [];
    let between = 0;
    const origin = job.origin ?? { x: 0, y: 0 };
    let at = origin;
    for (const work of job.work) {
        const pass = work.kind === 'area' ? areaPass(work, motion) : pathPass(work, motion);
        if (pass === undefined || work.passes === 0) continue;
        between += travel(at, pass.start, motion);
        const back = travel(pass.end, pass.start, motion);
        works.push(workTime(work, pass, back));
        at = pass.end;
    }
    between += travel(at, origin, motion);
    const focusing = focusTime(job);
    return { total: works.reduce((sum, work) => sum + work.time, between + focusing), between, focusing, works };
}

/** One pass: time, burnt length, and where it starts and ends. */
interface Pass {
    readonly time: number;
    readonly lit: number;
    readonly start: BlankPoint;
    readonly end: BlankPoint;
}

function workTime(work: Work, pass: Pass, back: number): WorkTime {
    const burning = (pass.lit * work.passes) / work.speed;
    return { name: work.name, time: pass.time * work.passes + back * (work.passes - 1), burning, energy: burning * work.power };
}

function travel(from: BlankPoint, to: BlankPoint, motion: Motion): number {
    return moveTime(Math.hypot(to.x - from.x, to.y - from.y), motion.topSpeed, motion.acceleration);
}

function areaPass(work: AreaWork, motion: Motion): Pass | undefined {
    const { hatch } = work;
    const over = overtravelOf(work, motion);
    let time = 0;
    let start: { u: number; v: number } | undefined;
    let at: { u: number; v: number } | undefined;
    eachSweep(work, motion, (sweep) => {
        const ends = sweepEnds(hatch, sweep, over);
        const v = hatch.first + sweep.line * hatch.pitch;
        // Lines that were left out stand between these two, each a part of the way further.
        if (at !== undefined)
            time += moveTime(Math.hypot(ends.start - at.u, v - at.v) / hatch.every, motion.topSpeed, motion.acceleration);
        start ??= { u: ends.start, v };
        time += moveTime(Math.abs(ends.end - ends.start), work.speed, motion.acceleration);
        at = { u: ends.end, v };
    });
    if (start === undefined || at === undefined) return undefined;
    const { cos, sin } = exactTurn(hatch.angle);
    const place = ({ u, v }: { u: number; v: number }): BlankPoint => ({ x: u * cos - v * sin, y: u * sin + v * cos });
    return { time: time * hatch.every, lit: hatch.length * hatch.every, start: place(start), end: place(at) };
}

function pathPass(work: PathWork, motion: Motion): Pass | undefined {
    let time = 0;
    let lit = 0;
    let start: BlankPoint | undefined;
    let at: BlankPoint | undefined;
    for (const path of work.paths) {
        const { points } = path;
        if (points.length < 4) continue;
        const first = { x: points[0]!, y: points[1]! };
        if (at !== undefined) time += travel(at, first, motion);
        start ??= first;
        const followed = pathTime(path, work.speed, motion.acceleration);
        time += followed.time;
        lit += followed.lit;
        at = { x: points[points.length - 2]!, y: points[points.length - 1]! };
    }
    return start === undefined || at === undefined ? undefined : { time, lit, start, end: at };
}

/**
 * Time (s) along a path from rest to rest. Corners are taken at cornerSpeed; a pass back and one forth
 * then hold the speeds at the corners to what the pieces between them allow.
 * @param each told of every piece and the time (s) at its end
 */
export function pathTime(
    { points, lit }: Path,
    speed: number,
    acceleration: number,
    each?: (piece: number, time: number) => void,
): { time: number; lit: number } {
    const { lengths, squares } = speedsAlong(points, speed, acceleration);
    let time = 0;
    let litLength = 0;
    for (let i = 0; i < lengths.length; i++) {
        if (lit === undefined || lit[i] === 1) litLength += lengths[i]!;
        time += pieceTime(lengths[i]!, Math.sqrt(squares[i]!), Math.sqrt(squares[i + 1]!), speed, acceleration);
        each?.(i, time);
    }
    return { time, lit: litLength };
}

/** Length of each piece (mm) and the squared speed at each point (mm2/s2) of a path that is followed from rest to rest. */
export function speedsAlong(
    points: Float64Array,
    speed: number,
    acceleration: number,
): { readonly lengths: Float64Array; readonly squares: Float64Array } {
    const pieces = points.length / 2 - 1;
    const lengths = new Float64Array(pieces);
    const squares = new Float64Array(pieces + 1);
    let [ux, uy] = [0, 0];
    for (let i = 0; i < pieces; i++) {
        const dx = points[2 * i + 2]! - points[2 * i]!;
        const dy = points[2 * i + 3]! - points[2 * i + 1]!;
        const length = Math.hypot(dx, dy);
        lengths[i] = length;
        const [vx, vy] = length > 0 ? [dx / length, dy / length] : [ux, uy];
        if (i > 0) {
            const turn = Math.atan2(Math.abs(ux * vy - uy * vx), ux * vx + uy * vy);
            squares[i] = Math.min(speed, cornerSpeed(turn, acceleration, CORNER_TOLERANCE)) ** 2;
        }
        [ux, uy] = [vx, vy];
    }
    for (let i = pieces - 1; i > 0; i--) squares[i] = Math.min(squares[i]!, squares[i + 1]! + 2 * acceleration * lengths[i]!);
    for (let i = 0; i < pieces; i++) squares[i + 1] = Math.min(squares[i + 1]!, squares[i]! + 2 * acceleration * lengths[i]!);
    return { lengths, squares };
}
