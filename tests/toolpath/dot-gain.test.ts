import { expect, test } from 'vitest';
import { dither } from '../../shared/art/raster/dither';
import { unite } from '../../shared/geometry/boolean';
import { area } from '../../shared/geometry/measure';
import { widen } from '../../shared/geometry/widen';
import { dotGain } from '../../shared/toolpath/dot-gain';
import { seeded } from '../geometry/shapes-at-random';

const size = 60;
const pitch = 0.1;
const at = (dots: Uint8Array) => ({ angle: 0, pitch, first: pitch / 2, left: 0, columns: size, rows: size, dots, every: 1 });
const grey = (value: number) => new Uint8Array(size * size).fill(value);

/** Minkowski-Steiner: a way of length l, widened to d, covers l d + pi d^2 / 4. */
test('a lone dot is as large as the way of the beam widened to the spot', () => {
    const dots = new Uint8Array(size * size);
    dots[30 * size + 30] = 1;
    for (const spot of [0.05, 0.1, 0.15, 0.25]) {
        const covered = dotGain(at(dots), spot, grey(1)).covered * (size * pitch) ** 2;
        expect(covered / (pitch * spot + (Math.PI * spot ** 2) / 4), `${spot}`).toBeCloseTo(1, 0.9);
    }
});

test('of a field of dots the share is that of the ways widened by the polygon library', () => {
    const random = seeded(3);
    for (const [spot, part] of [
        [0.15, 0.1],
        [0.15, 0.5],
        [0.12, 0.8],
        [0.22, 0.3],
    ] as const) {
        const dots = Uint8Array.from({ length: size * size }, () => (random() < part ? 1 : 0));
        const ways = [...dots.keys()]
            .filter((k) => dots[k] === 1)
            .map((k) => {
                const [x, y] = [(k % size) * pitch, (Math.floor(k / size) + 0.5) * pitch];
                return { points: Float64Array.of(x, y, x + pitch, y), closed: false };
            });
        const wide = unite(widen(ways, { width: spot, cap: 'round', join: 'round', miterLimit: 4 }, 1e-3).rings);
        // What reaches over the edge of the field is not of its cells.
        const rim = 2 * size * pitch * spot * part;
        const all = (size * pitch) ** 2;
        expect(Math.abs(dotGain(at(dots), spot, grey(128)).covered - area(wide) / all)).toBeLessThan(0.01 + rim / all);
    }
});

test('greys look darker the wider the spot, white stays white, and black is black', () => {
    const darkness = Uint8Array.from({ length: size * size }, (_, k) => Math.round((255 * (k % size)) / (size - 1)));
    const dots = dither({ columns: size, rows: size, darkness }, 'floyd-steinberg');
    const middle = (spot: number): number => {
        const { curve } = dotGain(at(dots), spot, darkness);
        expect(curve[0]).toEqual({ from: 0, to: 0 });
        expect(curve.at(-1)!.to).toBeGreaterThan(0.97);
        return curve.find(({ from }) => from > 0.45)!.to;
    };
    const [narrow, usual, wide] = [0.1, 0.15, 0.2].map(middle);
    expect(narrow).toBeGreaterThan(0.45);
    expect(usual).toBeGreaterThan(narrow! + 0.1);
    expect(wide).toBeGreaterThan(usual!);
});
