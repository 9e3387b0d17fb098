import { describe, expect, it } from 'vitest';
import { ReachMap } from '../../shared/bench/reach-map';

const box = { minX: 0, minY: 0, maxX: 2, maxY: 1 };

describe('a map of how far each spot lets the veneer in', () => {
    it('counts what lies beside its cells by area, and notes it in none of them', () => {
        const map = new ReachMap(box, 1);
        const noted = (): string => JSON.stringify([map.areaUpTo(1), map.reachWhere(0.01)]);
        for (const [x, y] of [
            [-0.01, 0.5],
            [2.01, 0.5],
            [1, -0.01],
            [1, 1.01],
        ] as const) {
            const before = noted();
            map.add(x, y, 0.5, 0.01, true);
            expect(noted()).not.toBe(before);
        }
        expect(map.areaUpTo(1)).toBeCloseTo(0.04, 9);
        expect(map.touching(0.6).every((cell) => cell === 0)).toBe(true);
    });
});
