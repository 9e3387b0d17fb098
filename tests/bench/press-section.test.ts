import { describe, expect, it } from 'vitest';
import { pressSection } from '../../shared/bench/press-section';
import type { PressHalves } from '../../shared/bench/virtual-press';
import { normalCumulative } from '../../shared/burn/distributions';
import { depthOf } from '../../shared/burn/dose';
import { union } from '../../shared/geometry/boolean';
import { emptyRegion } from '../../shared/geometry/region';
import { rectangle } from '../../shared/geometry/shapes';

const law = { threshold: 0.2, energy: 2, fade: 1 };
const sigma = 0.05;
const thickness = 0.6;
const pocketDose = 0.74;
const veneerDose = 0.9;

/** Two tongues of veneer side by side over one pocket, all of them 10 mm high: far from a corner at half of that. */
const halves: PressHalves = {
    pocket: { law, sigma, passes: 2, region: rectangle(0, 0, 9, 10), dose: pocketDose },
    veneer: { law, sigma, passes: 2, standing: union([rectangle(0.1, 0, 4, 10), rectangle(5, 0, 3.9, 10)]), dose: veneerDose },
    thickness,
    film: 0.06,
    sanded: 0,
};

/** Height of a line of points at x; undefined beyond its ends. */
function heightAt(points: readonly number[], x: number): number | undefined {
    for (let i = 0; i + 3 < points.length; i += 2) {
        const [fromX, fromY, toX, toY] = points.slice(i, i + 4) as [number, number, number, number];
        if (x >= fromX && x <= toX) return fromY + ((toY - fromY) * (x - fromX)) / (toX - fromX);
    }
    return undefined;
}

/** The dose of a strip from one edge to another, as a part of that of a wide area. */
const strip = (x: number, from: number, to: number): number =>
    normalCumulative((x - from) / sigma) - normalCumulative((x - to) / sigma);

describe('a section through both halves', () => {
    const insertion = 0.3;
    const section = pressSection(halves, insertion, 5)!;

    it('shows the board’s floor and walls as the beam makes them, within what can be seen', () => {
        for (let x = -0.5; x < 9.5; x += 0.013) {
            const wanted = -depthOf(law, pocketDose * strip(x, 0, 9), 2);
            expect(Math.abs(heightAt(section.board, x)! - wanted), `at ${x}`).toBeLessThan(0.03);
        }
        expect(Math.min(...section.board.filter((_, index) => index % 2 === 1))).toBeCloseTo(-depthOf(law, pocketDose, 2), 3);
    });

    it('shows each tongue of the veneer by itself, and the underside of its walls', () => {
        expect(section.veneer).toHaveLength(2);
        for (const [index, [from, to]] of [[0.1, 4.1] as const, [5, 8.9] as const].entries()) {
            const line = section.veneer[index]!;
            for (let x = line[0]!; x <= line.at(-2)!; x += 0.013) {
                const wanted = depthOf(law, veneerDose * (1 - strip(x, from, to)), 2) - insertion;
                expect(Math.abs(heightAt(line, x)! - wanted), `at ${x}`).toBeLessThan(0.02);
            }
            expect(line[0]).toBeLessThan(from + 0.05);
            expect(line[0]).toBeGreaterThan(from - 4 * sigma);
        }
        expect(section.top).toBeCloseTo(thickness - insertion, 9);
        expect([section.from, section.to]).toEqual([0.1 - 1, 8.9 + 1]);
    });

    it('needs few points where all is straight, and goes from left to right', () => {
        const xs = section.board.filter((_, index) => index % 2 === 0);
        expect(xs.length).toBeLessThan(60);
        expect(xs.every((x, index) => index === 0 || x > xs[index - 1]!)).toBe(true);
        expect(xs[0]).toBeCloseTo(section.from, 1);
        expect(xs.at(-1)).toBeCloseTo(section.to, 1);
    });

    it('beside the pieces only the face of the board is left', () => {
        const beside = pressSection(halves, insertion, 14)!;
        expect(beside.veneer).toEqual([]);
        expect(Math.min(...beside.board.filter((_, index) => index % 2 === 1))).toBeCloseTo(0, 9);
    });

    it('is none without veneer or with a beam that is none', () => {
        const veneer = { ...halves.veneer, standing: emptyRegion };
        expect(pressSection({ ...halves, veneer }, insertion, 5)).toBeUndefined();
        for (const odd of [0, -1, Number.NaN, 1e7]) {
            const both = {
                ...halves,
                pocket: { ...halves.pocket, sigma: odd },
                veneer: { ...halves.veneer, sigma: odd },
            };
            expect(pressSection(both, insertion, 5)).toBeUndefined();
        }
    });
});
