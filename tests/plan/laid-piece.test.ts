import fc from 'fast-check';
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { lain, type MachinePoint, measuredLie } from '../../shared/plan/laid-piece';

/** Kabsch's way by singular values (A solution for the best rotation to relate two sets of vectors, 1976; from memory), on matrices. */
function witness(planned: readonly MachinePoint[], measured: readonly MachinePoint[]) {
    const rows = (points: readonly MachinePoint[]) => new Matrix(points.map(({ x, y }) => [x, y]));
    const [p, q] = [rows(planned), rows(measured)];
    const [pMean, qMean] = [p.mean('column'), q.mean('column')];
    const h = p.clone().subRowVector(pMean).transpose().mmul(q.clone().subRowVector(qMean));
    const { leftSingularVectors: u, rightSingularVectors: v } = new SingularValueDecomposition(h);
    const mirrored =
        (v.get(0, 0) * v.get(1, 1) - v.get(0, 1) * v.get(1, 0)) * (u.get(0, 0) * u.get(1, 1) - u.get(0, 1) * u.get(1, 0)) < 0;
    const r = v.mmul(Matrix.diag([1, mirrored ? -1 : 1])).mmul(u.transpose());
    const moved = p.mmul(r.transpose());
    const off = [0, 1].map((k) => qMean[k]! - moved.getColumn(k).reduce((sum, value) => sum + value, 0) / planned.length);
    const at = moved.to2DArray().map(([x, y]) => ({ x: x! + off[0]!, y: y! + off[1]! }));
    return at;
}

const point = fc.record({
    x: fc.double({ min: -300, max: 300, noNaN: true }),
    y: fc.double({ min: -300, max: 300, noNaN: true }),
});
const pairsOf = (planned: readonly MachinePoint[], measured: readonly MachinePoint[]) =>
    planned.map((each, index) => ({ planned: each, measured: measured[index]! }));

describe('a piece that lies aside', () => {
    it('is turned and moved as the decomposition by singular values says', () => {
        const noisy = fc.record({
            planned: fc.array(point, { minLength: 2, maxLength: 6 }),
            turn: fc.double({ min: -3, max: 3, noNaN: true }),
            move: point,
            noise: fc.array(
                fc.record({
                    x: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
                    y: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
                }),
                {
                    minLength: 6,
                    maxLength: 6,
                },
            ),
        });
        fc.assert(
            fc.property(noisy, ({ planned, turn, move, noise }) => {
                const apart = planned.some((a) => planned.some((b) => Math.hypot(a.x - b.x, a.y - b.y) > 20));
                fc.pre(apart);
                const measured = planned.map((each, index) => {
                    const at = lain(each, { turn, ...move });
                    return { x: at.x + noise[index]!.x, y: at.y + noise[index]!.y };
                });
                const lie = measuredLie(pairsOf(planned, measured))!;
                const expected = witness(planned, measured);
                for (const [index, each] of planned.entries()) {
                    const at = lain(each, lie);
                    expect(at.x).toBeCloseTo(expected[index]!.x, 6);
                    expect(at.y).toBeCloseTo(expected[index]!.y, 6);
                    const left = Math.hypot(expected[index]!.x - measured[index]!.x, expected[index]!.y - measured[index]!.y);
                    expect(lie.residuals[index]).toBeCloseTo(left, 6);
                }
            }),
            { numRuns: 300 },
        );
    });

    it('of two marks leaves half of what they are nearer or farther apart at each, and never scales', () => {
        const lie = measuredLie(
            pairsOf(
                [
                    { x: 0, y: 0 },
                    { x: 80, y: 0 },
                ],
                [
                    { x: 5, y: 5 },
                    { x: 5, y: 85.4 },
                ],
            ),
        )!;
        expect(lie.turn).toBeCloseTo(Math.PI / 2, 12);
        expect(lie.scale).toBeCloseTo(80.4 / 80, 12);
        expect(lie.residuals.map((each) => each.toFixed(6))).toEqual(['0.200000', '0.200000']);
        expect(lain({ x: 40, y: 0 }, lie)).toEqual({ x: expect.closeTo(5, 9), y: expect.closeTo(45.2, 9) });
    });

    it('is not known by one mark, nor by two in one place', () => {
        const at = { x: 3, y: 4 };
        expect(measuredLie([{ planned: at, measured: at }, { planned: { x: 90, y: 4 } }])).toBeUndefined();
        expect(measuredLie(pairsOf([at, { x: 3.2, y: 4 }], [at, { x: 3.2, y: 4 }]))).toBeUndefined();
    });
});
