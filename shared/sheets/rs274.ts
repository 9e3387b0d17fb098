import { exactTurn } from '../toolpath/edges';
import { focusHeightsOf } from '../toolpath/focus';
import {
    type AreaWork,
    fileLinesOf,
    isRunnable,
    MAX_FILE_LINES,
    type MachineJob,
    overtravelOf,
    type PathWork,
} from '../toolpath/job';
import { reachOfAll, reachOfJob } from '../toolpath/reach';
import { eachSweep, sweepEnds } from '../toolpath/sweep';
import { Rs274Lines, type Rs274Options, type Rs274Problem } from './rs274-lines';

/*
 * Machine files in RS-274/NGC as Kramer, Proctor and Messina describe it (The NIST RS274NGC Interpreter,
 * Version 3, NISTIR 6556, 2000): G21 millimetres, G90 absolute, G94 feed in units a minute, M3 (or M4, see burn/output) and M5 as
 * beam ready and off, M7 and M9 as air on and off, lines of at most 256 characters, comments in ( ).
 * S as beam power lies outside of that standard, so a comment says what it means.
 */

export type { Rs274Options, Rs274Problem };

export type Rs274Result = { readonly text: string } | { readonly problem: Rs274Problem };

/** The machine file of a job, or why there is none. The same job gives the same text, byte for byte. */
export function rs274(job: MachineJob, options: Rs274Options): Rs274Result {
    const problem = problemOf(job, options);
    if (problem !== undefined) return { problem };
    const origin = job.origin ?? { x: 0, y: 0 };
    const out = new Rs274Lines(options, origin);
    const focused = focusHeightsOf(job).length > 1;
    const reach = reachOfJob(job);
    out.head(focused && job.focusByHand !== true, reach && reachOfAll([reach], origin));
    for (const work of job.work) {
        out.comment(work.name);
        for (let pass = 0; pass < work.passes && out.failed === undefined; pass++) writePass(out, work, pass, job, focused);
        if (out.failed !== undefined) return { problem: out.failed };
    }
    out.foot();
    return out.failed === undefined ? { text: out.text() } : { problem: out.failed };
}

function writePass(out: Rs274Lines, work: MachineJob['work'][number], pass: number, job: MachineJob, focused: boolean): void {
    if (work.passes > 1) out.comment(`pass ${pass + 1} of ${work.passes}`);
    if (focused) out.focus(work.focus?.[pass] ?? 0, job.focusByHand === true);
    out.air(work.air === true);
    if (work.kind === 'area') writeArea(out, work, job);
    else writePaths(out, work);
}

function problemOf(job: MachineJob, { fullPower, fullScale = 1000 }: Rs274Options): Rs274Problem | undefined {
    const usable = (value: number, most: number): boolean => value > 0 && value <= most;
    if (!usable(fullPower, 1e6) || !usable(fullScale, 1e6)) return 'not-finite';
    const { x, y } = job.origin ?? { x: 0, y: 0 };
    if (!(Math.abs(x) <= 1e6 && Math.abs(y) <= 1e6)) return 'not-finite';
    if (!isRunnable(job)) return 'not-finite';
    for (const work of job.work) {
        if (work.power > fullPower * (1 + 1e-9)) return 'power-over';
        if (work.kind === 'area' && work.hatch.every !== 1) return 'incomplete-hatch';
    }
    const lines = job.work.reduce((sum, work) => sum + fileLinesOf(work), 0);
    return lines > MAX_FILE_LINES ? 'too-long' : undefined;
}

function writeArea(out: Rs274Lines, work: AreaWork, job: MachineJob): void {
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

function writePaths(out: Rs274Lines, work: PathWork): void {
    for (const { points, lit, share } of work.paths) {
        if (points.length < 4) continue;
        out.rapid(points[0]!, points[1]!);
        for (let i = 2; i + 1 < points.length; i += 2) {
            const piece = i / 2 - 1;
            const isLit = lit === undefined || lit[piece] === 1;
            out.feed(points[i]!, points[i + 1]!, work.speed, isLit ? work.power * (share?.[piece] ?? 1) : 0);
        }
    }
}
