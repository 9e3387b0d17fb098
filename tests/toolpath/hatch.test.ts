import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { area } from '../../shared/geometry/measure';
import type { Region } from '../../shared/geometry/region';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { rotate } from '../../shared/geometry/transform';
import { type Hatch, hatch } from '../../shared/toolpath/hatch';
import { dish, reversed, star } from './shapes';

/** Whether a place lies in a region, by counting crossings of its own. */
function inside(region: Region, x: number, y: number): boolean {
    let odd = false;
    for (const ring of region.rings) {
        for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
            const [x0, y0, x1, y1] = [ring[j]!, ring[j + 1]!, ring[i]!, ring[i + 1]!];
            if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) odd = !odd;
        }
    }
    return odd;
}

function* segmentsOf({ angle, pitch, first, lines, starts, ends }: Hatch): Generator<{ x: number; y: number; u: number }[]> {
    for (let line = 0; line < lines; line++) {
        for (let i = starts[line]!; i < starts[line + 1]!; i++) {
            const v = first + line * pitch;
            yield [ends[2 * i]!, ends[2 * i + 1]!].map((u) => ({
                x: u * Math.cos(angle) - v * Math.sin(angle),
                y: u * Math.sin(angle) + v * Math.cos(angle),
                u,
            }));
        }
    }
}

describe('scan lines', () => {
    it.each([0, 0.3, Math.PI / 2, 2, -1.1, Math.PI])('at %d rad lie inside of the region and end on its edge', (angle) => {
        const region = dish(30, 20, 25);
        const lines = hatch(region, 0.31, angle)!;
        expect(lines.segments).toBeGreaterThan(100);
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        for (const [a, b] of segmentsOf(lines)) {
            for (const part of [1e-4, 0.5, 1 - 1e-4])
                expect(inside(region, a!.x + part * (b!.x - a!.x), a!.y + part * (b!.y - a!.y))).toBe(true);
            expect(inside(region, a!.x - 1e-6 * c, a!.y - 1e-6 * s)).toBe(false);
            expect(inside(region, b!.x + 1e-6 * c, b!.y + 1e-6 * s)).toBe(false);
        }
    });

    it.each([0, 0.7, Math.PI / 2])('cover the area at %d rad', (angle) => {
        const region = dish(30, 20, 25);
        expect((hatch(region, 0.02, angle)!.length * 0.02) / area(region)).toBeCloseTo(1, 3);
    });

    it('are as many as fit in, evenly, and stand in the middle of their strips', () => {
        const lines = hatch(rectangle(10, 5, 100, 50), 0.1, 0)!;
        expect(lines).toMatchObject({ lines: 500, segments: 500, every: 1 });
        expect(lines.first).toBeCloseTo(5.05, 12);
        expect(lines.length).toBeCloseTo(50_000, 6);
        expect(hatch(rectangle(0, 0, 10, 0.03), 0.1, 0)).toMatchObject({ lines: 1, segments: 1 });
    });

    it('stay where they are when the region turns with them', () => {
        const region = dish(0, 0, 25);
        const straight = hatch(region, 0.2, 0)!;
        const turned = hatch(rotate(region, 0.9), 0.2, 0.9)!;
        expect(turned.segments).toBe(straight.segments);
        expect(turned.length).toBeCloseTo(straight.length, 6);
    });

    it('run through edges on a line, corners on a line, and parts that touch', () => {
        // Corners of the diamond and the level edges of the steps lie on scan lines.
        const diamond = { rings: [Float64Array.of(5, 0, 10, 5, 5, 10, 0, 5)] };
        const lines = hatch(diamond, 1, 0)!;
        expect(lines.segments).toBe(10);
        expect(lines.length).toBeCloseTo(50, 9);
        const steps = { rings: [Float64Array.of(0, 0, 9, 0, 9, 1.5, 6, 1.5, 6, 2.5, 3, 2.5, 3, 3.5, 0, 3.5)] };
        expect(hatch(steps, 0.5, 0)!.length * 0.5).toBeCloseTo(area(steps), 6);
        const touching = { rings: [...rectangle(0, 0, 5, 4).rings, ...rectangle(5, 0, 5, 4).rings] };
        expect(hatch(touching, 1, 0)).toMatchObject({ segments: 4, length: 40 });
    });

    it('leave holes and fill what stands in holes', () => {
        const rings = [...circle(0, 0, 20).rings, reversed(star(0, 0, 8, 4)), ...circle(0, 0, 2).rings];
        const lines = hatch({ rings }, 0.1, 0)!;
        const most = Math.max(...Array.from({ length: lines.lines }, (_, line) => lines.starts[line + 1]! - lines.starts[line]!));
        expect(most).toBeGreaterThanOrEqual(3);
    });

    it('sort a line of very many crossings', () => {
        // A comb of 400 teeth, drawn from right to left.
        const points: number[] = [0, 0];
        for (let i = 400; i > 0; i--) points.push(i, 0, i - 0.5, 10);
        const comb = { rings: [Float64Array.from(points)] };
        const lines = hatch(comb, 1, 0)!;
        for (let i = 1; i < lines.ends.length; i++) {
            if (lines.starts.includes(i / 2)) continue;
            expect(lines.ends[i]).toBeGreaterThan(lines.ends[i - 1]!);
        }
        expect(lines.segments).toBe(4000);
        expect(lines.length).toBeCloseTo(area(comb), 6);
    });
});

describe('too much', () => {
    it('is made in part, and says so', () => {
        const lines = hatch(rectangle(0, 0, 600, 400), 0.001, 0, { most: 10_000 })!;
        expect(lines.segments).toBeLessThanOrEqual(10_000);
        expect(lines.every).toBeGreaterThanOrEqual(40);
        expect(lines.pitch).toBeCloseTo(0.001 * lines.every, 12);
        expect((lines.length * lines.pitch) / 240_000).toBeCloseTo(1, 3);
    });

    it('does not hang on a pitch of next to nothing', () => {
        const lines = hatch(rectangle(0, 0, 600, 400), 1e-300, 0, { most: 100_000 })!;
        expect(lines.segments).toBeLessThanOrEqual(100_000);
        expect(Number.isFinite(lines.length)).toBe(true);
    });

    it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('no hatch at a pitch of %d', (pitch) => {
        expect(hatch(rectangle(0, 0, 1, 1), pitch, 0)).toBeUndefined();
    });

    it('no hatch of what is not finite, an empty one of nothing', () => {
        expect(hatch({ rings: [Float64Array.of(0, 0, Number.NaN, 1, 1, 1)] }, 1, 0)).toBeUndefined();
        expect(hatch({ rings: [Float64Array.of(0, 0, 1e308, 1, 1, 1)] }, 1, 0)).toBeUndefined();
        expect(hatch(rectangle(0, 0, 1, 1), 1, Number.NaN)).toBeUndefined();
        expect(hatch({ rings: [] }, 1, 0)).toMatchObject({ lines: 0, segments: 0, length: 0 });
        expect(hatch({ rings: [Float64Array.of(1, 1, 2, 2)] }, 1, 0)).toMatchObject({ segments: 0 });
    });

    it('any rings give sorted segments or nothing', () => {
        const coordinate = fc.oneof(fc.double({ min: -50, max: 50, noNaN: true }), fc.integer({ min: -5, max: 5 }));
        fc.assert(
            fc.property(fc.array(fc.array(coordinate, { maxLength: 14 }), { maxLength: 4 }), coordinate, (rings, angle) => {
                const lines = hatch({ rings: rings.map((ring) => Float64Array.from(ring)) }, 0.5, angle, { most: 1000 });
                if (lines === undefined) return;
                expect(lines.starts[lines.lines] ?? 0).toBe(lines.segments);
                for (let i = 0; i < lines.segments; i++) expect(lines.ends[2 * i]).toBeLessThan(lines.ends[2 * i + 1]!);
            }),
            { numRuns: 300, seed: 2 },
        );
    });
});
