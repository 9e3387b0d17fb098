import { describe, expect, it } from 'vitest';
import { rectangle } from '../../shared/geometry/shapes';
import { hatch } from '../../shared/toolpath/hatch';
import { moveTime, pieceTime } from '../../shared/toolpath/motion';
import { timeOfJob } from '../../shared/toolpath/time';

/* Textbook kinematics (uniform acceleration, rest to rest): distance mm, speed mm/s, acceleration mm/s2, time s. */
const table = [
    [100, 200, 1000, 0.7],
    [10, 200, 1000, 0.2],
    [40, 200, 1000, 0.4],
    [300, 500, 3000, 0.766667],
    [1, 100, 500, 0.0894427],
];

describe('a move from rest to rest', () => {
    it.each(table)('of %d mm at %d mm/s and %d mm/s2', (distance, speed, acceleration, time) => {
        expect(moveTime(distance!, speed!, acceleration!)).toBeCloseTo(time!, 6);
        expect(pieceTime(distance!, 0, 0, speed!, acceleration!)).toBeCloseTo(time!, 6);
    });
});

describe('an area of 100 x 50 mm', () => {
    it('takes 229.99 s at 0.1 mm, 400 mm/s and 4000 mm/s2, both ways', () => {
        const lines = hatch(rectangle(0, 0, 100, 50), 0.1, 0)!;
        expect(lines.lines).toBe(500);
        const work = { kind: 'area', name: 'area', hatch: lines, bothWays: true, power: 20, speed: 400, passes: 1 } as const;
        const time = timeOfJob({ work: [work], motion: { topSpeed: 400, acceleration: 4000 } })!;
        expect(time.works[0]!.time).toBeCloseTo(229.99, 9);
    });
});
