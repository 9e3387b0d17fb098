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
});
