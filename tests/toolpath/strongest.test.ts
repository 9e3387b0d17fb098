import { describe, expect, it } from 'vitest';
import { withEvenEnergy } from '../../shared/toolpath/held-speed';
import type { Path } from '../../shared/toolpath/path';
import { strongestOf } from '../../shared/toolpath/strongest';
import { speedsAlong } from '../../shared/toolpath/time';

const acceleration = 3000;
const motion = { topSpeed: 300, acceleration };
const sigma = 0.04;
const speed = 60;
const square: Path = { points: Float64Array.from([0, 0, 20, 0, 20, 20, 0, 20, 0, 0]) };
/** The same with its start in the middle of a side, and not closed. */
const open: Path = { points: Float64Array.from([10, 0, 20, 0, 20, 20]) };

/** Dose at a place against that of an endless straight line, by the head's way in small steps of time and the beam's profile in the plane. */
function doseAt({ points, share }: Path, x: number, y: number): number {
    const { lengths, squares } = speedsAlong(points, speed, acceleration);
    let sum = 0;
    for (let i = 0; i < lengths.length; i++) {
        const length = lengths[i]!;
        const [dx, dy] = [(points[2 * i + 2]! - points[2 * i]!) / length, (points[2 * i + 3]! - points[2 * i + 1]!) / length];
        const dt = 2e-6;
        let way = 0;
        let v = Math.sqrt(squares[i]!);
        while (way < length) {
            const brake = Math.sqrt(squares[i + 1]! + 2 * acceleration * (length - way));
            v = Math.max(acceleration * dt, Math.min(speed, v + acceleration * dt, brake));
            const distance = Math.hypot(points[2 * i]! + way * dx - x, points[2 * i + 1]! + way * dy - y);
            sum += (share?.[i] ?? 1) * dt * Math.exp(-(distance ** 2) / (2 * sigma ** 2));
            way += v * dt;
        }
    }
    return (sum * speed) / (sigma * Math.sqrt(2 * Math.PI));
}

describe('where a line gets most', () => {
    const cut = (path: Path): Path => ({ ...withEvenEnergy(path, speed, acceleration, 0), share: undefined! });

    it('is where the head stands: at the start of a closed path, which is also its end', () => {
        const path = cut(square);
        const found = strongestOf([path], speed, motion, sigma)!;
        expect([found.x, found.y]).toEqual([0, 0]);
        expect(found.times / doseAt(path, 0, 0)).toBeCloseTo(1, 1);
        expect(found.times).toBeGreaterThan(4);
    });

    it('is less at a corner than where the way begins', () => {
        const path = cut(open);
        const found = strongestOf([path], speed, motion, sigma)!;
        expect([found.x, found.y]).toEqual([20, 0]);
        expect(found.times / doseAt(path, 20, 0)).toBeCloseTo(1, 1);
        expect(doseAt(path, 10, 0)).toBeLessThan(found.times);
    });

    it('is next to nothing where the power goes down as far as the speed, and what the least power leaves where it does not', () => {
        const even = withEvenEnergy(square, speed, acceleration, 0);
        expect(strongestOf([even], speed, motion, sigma)?.times ?? 1).toBeLessThan(1.8);
        const held = withEvenEnergy(square, speed, acceleration, 0.5);
        const found = strongestOf([held], speed, motion, sigma)!;
        expect(found.times / doseAt(held, found.x, found.y)).toBeCloseTo(1, 1);
        expect(found.times).toBeGreaterThan(2);
    });

    it('there is none on a straight in full speed, nor of a path without a point', () => {
        expect(strongestOf([{ points: Float64Array.from([0, 0]) }, { points: new Float64Array() }], speed, motion, sigma)).toBe(
            undefined,
        );
    });
});
