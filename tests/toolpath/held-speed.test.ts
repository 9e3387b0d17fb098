import { describe, expect, it } from 'vitest';
import { heldSpeed, withEvenEnergy } from '../../shared/toolpath/held-speed';
import { cornerSpeed } from '../../shared/toolpath/motion';
import type { Path } from '../../shared/toolpath/path';
import { CORNER_TOLERANCE, pathTime } from '../../shared/toolpath/time';

const acceleration = 3000;
const square: Path = { points: Float64Array.from([0, 0, 20, 0, 20, 20, 0, 20, 0, 0]) };

function circle(radius: number, count: number): Path {
    const at = (k: number): number[] => [
        radius * Math.cos((2 * Math.PI * k) / count),
        radius * Math.sin((2 * Math.PI * k) / count),
    ];
    return { points: Float64Array.from(Array.from({ length: count + 1 }, (_, k) => at(k)).flat()) };
}

/** Energy (J) that each tenth of a millimetre gets, by small steps of time: v² = v₀² + 2as from rest, from corner to corner, and to rest. */
function energies({ points, share }: Path, speed: number, power: number, corner: number): Map<number, number> {
    const found = new Map<number, number>();
    const pieces = points.length / 2 - 1;
    let way = 0;
    for (let i = 0; i < pieces; i++) {
        const length = Math.hypot(points[2 * i + 2]! - points[2 * i]!, points[2 * i + 3]! - points[2 * i + 1]!);
        for (let at = 0; at < length; at += 1e-3) {
            const along = (way + at) % 20;
            const ends = [way + at < 20 ? 0 : corner, way + at >= 60 ? 0 : corner] as const;
            const v = Math.min(
                speed,
                Math.sqrt(ends[0] ** 2 + 2 * acceleration * Math.max(along, 5e-4)),
                Math.sqrt(ends[1] ** 2 + 2 * acceleration * Math.max(20 - along, 5e-4)),
            );
            const key = Math.floor((way + at) * 10);
            found.set(key, (found.get(key) ?? 0) + (power * (share?.[i] ?? 1) * 1e-3) / v);
        }
        way += length;
    }
    return found;
}

describe('a speed that the head holds', () => {
    it('is the top speed along a long straight, and less the tighter the curve', () => {
        const straight: Path = { points: Float64Array.from([0, 0, 4000, 0]) };
        expect(heldSpeed([straight], { topSpeed: 300, acceleration })).toBe(300);
        const speeds = [40, 10, 2, 0.5].map((radius) => heldSpeed([circle(radius, 200)], { topSpeed: 300, acceleration }));
        expect(speeds).toEqual(speeds.toSorted((a, b) => b - a));
        for (const [k, radius] of [40, 10, 2, 0.5].entries())
            expect(speeds[k]!).toBeLessThan(1.2 * Math.sqrt(acceleration * radius));
    });

    it('takes at most a tenth longer than an even one', () => {
        for (const path of [square, circle(10, 90), circle(1, 40)]) {
            const speed = heldSpeed([path], { topSpeed: 300, acceleration });
            const { time, lit } = pathTime(path, speed, acceleration);
            expect(time).toBeLessThanOrEqual((1.1 * lit) / speed);
        }
    });
});

describe('power that follows the speed of the head', () => {
    const speed = 60;
    const corner = cornerSpeed(Math.PI / 2, acceleration, CORNER_TOLERANCE);

    it('gives all of a path the same energy, where constant power gives its corners several times as much', () => {
        const power = 6;
        const even = energies(withEvenEnergy(square, speed, acceleration, 0), speed, power, corner);
        const constant = energies(square, speed, power, corner);
        const wanted = (power / speed) * 0.1;
        expect(Math.max(...constant.values())).toBeGreaterThan(2.5 * wanted);
        for (const [tenth, energy] of even) if (tenth > 0 && tenth < 799) expect(energy / wanted, `${tenth}`).toBeCloseTo(1, 0);
        const mean = [...even.values()].reduce((sum, each) => sum + each, 0) / (wanted * even.size);
        expect(mean).toBeGreaterThan(0.97);
        expect(mean).toBeLessThan(1.05);
    });

    it('goes no lower than the laser holds, and changes neither way nor time', () => {
        const path = withEvenEnergy(square, speed, acceleration, 0.4);
        expect(Math.min(...path.share!)).toBe(0.4);
        expect(Math.max(...path.share!)).toBe(1);
        expect(pathTime(path, speed, acceleration).time).toBeCloseTo(pathTime(square, speed, acceleration).time, 9);
        expect(pathTime(path, speed, acceleration).lit).toBeCloseTo(80, 9);
    });
});
