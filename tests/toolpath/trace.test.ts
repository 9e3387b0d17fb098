import { describe, expect, test } from 'vitest';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { cutPaths } from '../../shared/toolpath/cut';
import { hatch } from '../../shared/toolpath/hatch';
import type { MachineJob, Work } from '../../shared/toolpath/job';
import { outlinePaths } from '../../shared/toolpath/outline';
import { timeOfJob } from '../../shared/toolpath/time';
import { traceOfJob } from '../../shared/toolpath/trace';

const motion = { topSpeed: 400, acceleration: 4000 };
const shape = { rings: [...circle(30, 30, 40).rings, ...rectangle(60, 10, 30, 20).rings] };
const burnt = { power: 20, speed: 200, passes: 2 };
const area: Work = { kind: 'area', name: 'area', ...burnt, hatch: hatch(shape, 0.5, 0.3)!, bothWays: true };
const outline: Work = { kind: 'path', name: 'outline', ...burnt, paths: outlinePaths(shape) };
const cut: Work = { kind: 'path', name: 'cut', ...burnt, speed: 10, paths: cutPaths(shape, { tabs: 3 }) };
const job: MachineJob = { work: [area, outline, cut], motion, origin: { x: 0, y: 100 } };

function end(traces: ReturnType<typeof traceOfJob>): number {
    const last = traces.at(-1)!;
    return last.start + last.pass * last.work.passes + last.back * (last.work.passes - 1);
}

describe('the way of the head', () => {
    test.each([60_000, 200])('takes the time that the job takes, with at most %d places', (most) => {
        const traces = traceOfJob(job, most);
        const { total } = timeOfJob(job)!;
        const { points } = traces.at(-1)!;
        const home = Math.hypot(points.at(-3)! - 0, points.at(-2)! - 100);
        // Less the way home, which is no work.
        const back = home / motion.topSpeed + motion.topSpeed / motion.acceleration;
        const short = 2 * Math.sqrt(home / motion.acceleration);
        const way = home >= motion.topSpeed ** 2 / motion.acceleration ? back : short;
        expect(end(traces)).toBeCloseTo(total - way, 6);
    });

    test('goes forward in time, pass by pass', () => {
        for (const { points, lit, pass } of traceOfJob(job)) {
            expect(points).toHaveLength(3 * lit.length);
            for (let i = 5; i < points.length; i += 3) expect(points[i]!).toBeGreaterThanOrEqual(points[i - 3]! - 1e-9);
            expect(points.at(-1)!).toBeCloseTo(pass, 9);
        }
    });

    test('burns as far as the scan lines and the outlines are long', () => {
        const lengths = traceOfJob(job).map(({ points, lit }) => {
            let sum = 0;
            for (let i = 1; i < lit.length; i++)
                if (lit[i] === 1) sum += Math.hypot(points[3 * i]! - points[3 * i - 3]!, points[3 * i + 1]! - points[3 * i - 2]!);
            return sum;
        });
        expect(lengths[0]).toBeCloseTo(area.kind === 'area' ? area.hatch.length : 0, 6);
        expect(lengths[1]).toBeCloseTo(Math.PI * 40 + 100, 0);
        expect(lengths[2]!).toBeLessThan(lengths[1]!);
    });

    test('is thinned where it would be too much', () => {
        const count = traceOfJob(job, 200).reduce((sum, { lit }) => sum + lit.length, 0);
        expect(count).toBeLessThan(400);
    });

    test('of speeds that are none there is none', () => {
        expect(traceOfJob({ ...job, motion: { topSpeed: Number.NaN, acceleration: 1 } })).toEqual([]);
    });

    test('is as fast as it was set but where it turns sharply and begins', () => {
        const [scan, edge] = traceOfJob(job);
        expect(scan!.pace.every((part) => Math.abs(part - 1) < 1e-9)).toBe(true);
        expect(edge!.pace).toHaveLength(edge!.lit.length);
        expect(Math.min(...edge!.pace)).toBeLessThan(0.8);
        expect(Math.max(...edge!.pace)).toBe(1);
        // Without a run-up the ends of a line are in the time of the line.
        const short = traceOfJob({ ...job, work: [{ ...area, overtravel: 0 } as Work] })[0]!;
        const slowed = short.pace.filter((_, i) => short.lit[i] === 1);
        expect(Math.max(...slowed)).toBeLessThan(0.95);
    });

    test('burns with the part of the power that the path says', () => {
        const [path] = outlinePaths(rectangle(0, 0, 10, 10));
        const share = new Float64Array(path!.points.length / 2 - 1).fill(0.4);
        const traced = traceOfJob({ ...job, work: [{ ...outline, paths: [{ ...path!, share }] } as Work] })[0]!;
        expect(traced.share.filter((_, i) => traced.lit[i] === 1)).toEqual([...share]);
    });
});
