import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { centreOf } from '../../shared/art/shape/arc';
import { Flattener } from '../../shared/art/shape/flatten';

const plenty = () => ({ corners: 1e6, told: false });

/** How far a point is from a chain of chords. */
function distance(points: Float64Array, x: number, y: number): number {
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i + 3 < points.length; i += 2) {
        const [ax, ay, bx, by] = [points[i]!, points[i + 1]!, points[i + 2]!, points[i + 3]!];
        const length = (bx - ax) ** 2 + (by - ay) ** 2;
        const t = length === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length));
        least = Math.min(least, Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay)));
    }
    return least;
}

const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
const tolerance = fc.constantFrom(0.5, 0.05, 0.005);

describe('flattened curves stay within the tolerance', () => {
    it('cubics', () => {
        fc.assert(
            fc.property(fc.array(coordinate, { minLength: 8, maxLength: 8 }), tolerance, (p, within) => {
                const sink = new Flattener(within, Math.PI, plenty());
                sink.moveTo(p[0]!, p[1]!);
                sink.cubicTo(p[2]!, p[3]!, p[4]!, p[5]!, p[6]!, p[7]!);
                const { points } = sink.end()[0]!;
                for (let i = 0; i <= 40; i++) {
                    const t = i / 40;
                    const weights = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
                    const x = weights.reduce((sum, weight, k) => sum + weight * p[2 * k]!, 0);
                    const y = weights.reduce((sum, weight, k) => sum + weight * p[2 * k + 1]!, 0);
                    expect(distance(points, x, y)).toBeLessThanOrEqual(within * 1.0001);
                }
            }),
            { numRuns: 150 },
        );
    });

    it('arcs, and their ends are the ends written', () => {
        const radius = fc.double({ min: 0.1, max: 200, noNaN: true });
        const turn = fc.double({ min: -180, max: 180, noNaN: true });
        fc.assert(
            fc.property(
                fc.tuple(
                    coordinate,
                    coordinate,
                    coordinate,
                    coordinate,
                    radius,
                    radius,
                    turn,
                    fc.boolean(),
                    fc.boolean(),
                    tolerance,
                ),
                ([x0, y0, x1, y1, rx, ry, degrees, large, sweep, within]) => {
                    const sink = new Flattener(within, Math.PI, plenty());
                    sink.moveTo(x0, y0);
                    sink.arcTo(rx, ry, degrees, large, sweep, x1, y1);
                    const { points } = sink.end()[0]!;
                    expect([...points.slice(-2)]).toEqual([x1, y1]);
                    const arc = centreOf(x0, y0, rx, ry, (degrees * Math.PI) / 180, large, sweep, x1, y1);
                    if (arc === undefined) return;
                    for (let i = 0; i <= 40; i++) {
                        const t = arc.start + (arc.sweep * i) / 40;
                        const px = arc.rx * Math.cos(t);
                        const py = arc.ry * Math.sin(t);
                        const x = arc.cx + Math.cos(arc.turn) * px - Math.sin(arc.turn) * py;
                        const y = arc.cy + Math.sin(arc.turn) * px + Math.cos(arc.turn) * py;
                        expect(distance(points, x, y)).toBeLessThanOrEqual(within * 1.0001 + 1e-6);
                    }
                },
            ),
            { numRuns: 150 },
        );
    });

    it('for strokes the chords also turn by little', () => {
        const sink = new Flattener(0.5, 0.1, plenty());
        sink.moveTo(0, 0);
        sink.cubicTo(0, 1, 1, 1, 1, 0);
        const { points } = sink.end()[0]!;
        for (let i = 2; i + 3 < points.length; i += 2) {
            const before = Math.atan2(points[i + 1]! - points[i - 1]!, points[i]! - points[i - 2]!);
            const after = Math.atan2(points[i + 3]! - points[i + 1]!, points[i + 2]! - points[i]!);
            expect(Math.abs(Math.atan2(Math.sin(after - before), Math.cos(after - before)))).toBeLessThanOrEqual(0.1);
        }
    });

    it('a moveto alone draws nothing; a closing after it draws a dot', () => {
        const sink = new Flattener(0.01, Math.PI, plenty());
        sink.moveTo(1, 1);
        sink.moveTo(2, 2);
        sink.close();
        expect(sink.end().map(({ points, closed }) => [[...points], closed])).toEqual([[[2, 2], true]]);
    });

    it('a cusp ends', () => {
        const sink = new Flattener(1e-9, 0.001, plenty());
        sink.moveTo(0, 0);
        sink.cubicTo(10, 10, 0, 10, 10, 0);
        expect(sink.end()[0]!.points.length).toBeLessThan(2 * 70_000);
    });

    it('stops when there have been corners enough', () => {
        const allowance = { corners: 10, told: false };
        const sink = new Flattener(1e-6, Math.PI, allowance);
        sink.moveTo(0, 0);
        sink.cubicTo(0, 10, 10, 10, 10, 0);
        expect(sink.end()[0]!.points.length).toBe(20);
        expect(allowance.corners).toBe(0);
    });
});
