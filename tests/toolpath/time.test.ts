import { describe, expect, it } from 'vitest';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { hatch } from '../../shared/toolpath/hatch';
import type { AreaWork, MachineJob } from '../../shared/toolpath/job';
import { cornerSpeed, moveTime } from '../../shared/toolpath/motion';
import { outlinePaths } from '../../shared/toolpath/outline';
import { CORNER_TOLERANCE, pathTime, timeOfJob } from '../../shared/toolpath/time';
import { simulate } from './simulate';

const motion = { topSpeed: 600, acceleration: 6000 };

function areaOf(region: ReturnType<typeof rectangle>, more: Partial<AreaWork> = {}): AreaWork {
    return {
        kind: 'area',
        name: 'area',
        hatch: hatch(region, 0.2, 0)!,
        bothWays: true,
        power: 20,
        speed: 300,
        passes: 1,
        ...more,
    };
}

function timeOf(work: AreaWork): number {
    return timeOfJob({ work: [work], motion })!.works[0]!.time;
}

describe('corners', () => {
    it('are all but stops when sharp, and nothing when straight', () => {
        expect(cornerSpeed(0, 6000, 0.01)).toBe(Number.POSITIVE_INFINITY);
        expect(cornerSpeed(Math.PI, 6000, 0.01)).toBeCloseTo(0, 6);
        expect(cornerSpeed(Math.PI / 2, 6000, 0.01)).toBeLessThan(15);
    });

    it.each([2, 10, 50])('let a flattened circle of %d mm be followed as fast as the circle', (diameter) => {
        // Chords cut to the tolerance of the corners: v² = a·r on the true curve.
        const [path] = outlinePaths(circle(0, 0, diameter, CORNER_TOLERANCE));
        const fastest = Math.sqrt((6000 * diameter) / 2);
        const { time } = pathTime(path!, 1e4, 6000);
        const ideal = (Math.PI * diameter) / fastest + fastest / 6000;
        expect(time / ideal).toBeGreaterThan(0.9);
        expect(time / ideal).toBeLessThan(1.15);
    });

    it('and the speeds between them are those of a machine stepped along', () => {
        // A zigzag that opens and sharpens, with pieces too short to reach the speed on.
        const points = Float64Array.from({ length: 160 }, (_, i) =>
            i % 2 === 0 ? 0.05 * i * (1 + 0.3 * Math.sin(i)) : ((i >> 1) % 3) * 0.02 * (i % 37),
        );
        const moves = Array.from({ length: points.length / 2 - 1 }, (_, i) => ({
            rapid: false,
            ...{ x0: points[2 * i]!, y0: points[2 * i + 1]!, x1: points[2 * i + 2]!, y1: points[2 * i + 3]! },
            ...{ z: 0, feed: 200 * 60, s: 1, air: false, stops: 0, comments: 0 },
        }));
        const stepped = simulate(moves, { ...motion, cornerTolerance: CORNER_TOLERANCE }, 0.001);
        expect(pathTime({ points }, 200, 6000).time / stepped).toBeCloseTo(1, 3);
    });

    it('on a straight path of many points cost nothing', () => {
        const points = Float64Array.from({ length: 202 }, (_, i) => (i % 2 === 0 ? i / 2 : 0));
        expect(pathTime({ points }, 200, 1000).time).toBeCloseTo(moveTime(100, 200, 1000), 9);
    });
});

describe('an area pass', () => {
    it('takes longer one way than both ways, and three times as long in three passes and the ways back', () => {
        const region = rectangle(0, 0, 60, 10);
        const both = timeOf(areaOf(region));
        expect(timeOf(areaOf(region, { bothWays: false }))).toBeGreaterThan(1.3 * both);
        const three = timeOf(areaOf(region, { passes: 3 }));
        expect(three).toBeGreaterThan(3 * both);
        expect(three).toBeLessThan(3.02 * both);
    });

    it('jumps a gap only where that is quicker', () => {
        const apart = (gap: number) => ({ rings: [...rectangle(0, 0, 5, 10).rings, ...rectangle(5 + gap, 0, 5, 10).rings] });
        const slow = { speed: 50 };
        const narrow = timeOf(areaOf(apart(1), slow)) - timeOf(areaOf(apart(0.5), slow));
        expect(narrow).toBeCloseTo((50 * 0.5) / 50, 1);
        // Across 200 mm at 50 mm/s each line would take 4 s more.
        expect(timeOf(areaOf(apart(200), slow))).toBeLessThan(0.4 * 50 * 4);
    });

    it('does not depend on how many lines were left out', () => {
        const region = circle(50, 50, 80);
        const all = timeOf(areaOf(region));
        const part = timeOf(areaOf(region, { hatch: hatch(region, 0.2, 0, { most: 50 })! }));
        expect(part / all).toBeGreaterThan(0.93);
        expect(part / all).toBeLessThan(1.07);
    });
});

describe('a job', () => {
    it('adds up its works and the ways between, from home and back', () => {
        const area = areaOf(rectangle(20, 20, 60, 10));
        const path = {
            kind: 'path',
            name: 'outline',
            paths: outlinePaths(circle(50, 50, 30)),
            power: 5,
            speed: 50,
            passes: 2,
        } as const;
        const time = timeOfJob({ work: [area, path], motion })!;
        expect(time.works.map((work) => work.name)).toEqual(['area', 'outline']);
        expect(time.total).toBeCloseTo(time.between + time.works[0]!.time + time.works[1]!.time, 9);
        expect(timeOfJob({ work: [area, path], motion, origin: { x: 500, y: 500 } })!.between).toBeGreaterThan(time.between + 1);
        expect(time.works[0]!.burning).toBeCloseTo(3000 / 300, 6);
        expect(time.works[0]!.energy).toBeCloseTo(200, 4);
        expect(time.works[1]!.energy).toBeCloseTo((2 * 5 * Math.PI * 30) / 50, 1);
    });

    it('of nothing takes no time', () => {
        expect(timeOfJob({ work: [], motion })).toEqual({ total: 0, between: 0, focusing: 0, works: [] });
        expect(timeOfJob({ work: [areaOf({ rings: [] })], motion })!.total).toBe(0);
        expect(timeOfJob({ work: [areaOf(rectangle(0, 0, 1, 1), { passes: 0 })], motion })!.total).toBe(0);
    });

    it.each([
        [{ topSpeed: 0, acceleration: 1 }, {}],
        [{ topSpeed: 1, acceleration: Number.NaN }, {}],
        [motion, { speed: -1 }],
        [motion, { power: 1e308 }],
        [motion, { passes: Number.NaN }],
    ])('of odd limits has no time: %j %j', (limits, more) => {
        const job: MachineJob = { work: [areaOf(rectangle(0, 0, 1, 1), more)], motion: limits };
        expect(timeOfJob(job)).toBeUndefined();
    });
});
