import { describe, expect, it } from 'vitest';
import { beamWidth, type KerfRow, kerfWidth } from '../../shared/burn/kerf-width';
import type { Quantity } from '../../shared/quantity/quantity';
import { nowhere } from '../../shared/quantity/where';

const beam = { spot: 0.15, threshold: 0.08 };
const settings = { power: 42.75, speed: 8, passes: 2 };
const mm = (value: number, tolerance = 0): Quantity => ({ value, tolerance, dimension: 'length', unit: 'mm', where: nowhere });
const row = (face: number, back?: number, speed = 8): KerfRow => ({
    ...settings,
    speed,
    face,
    reading: 0.015,
    ...(back === undefined ? {} : { back, backReading: 0.015 }),
});

describe('the width of a kerf', () => {
    it('is where a Gaussian line of that energy falls to the threshold', () => {
        // The dose across a line: E / (σ√2π) · exp(−x²/2σ²), stepped outwards until it is below.
        const sigma = beam.spot / 4;
        const energy = (settings.power * settings.passes) / settings.speed;
        let x = 0;
        while ((energy / (sigma * Math.sqrt(2 * Math.PI))) * Math.exp(-(x ** 2) / (2 * sigma ** 2)) > beam.threshold) x += 1e-5;
        expect(beamWidth(beam, settings)).toBeCloseTo(2 * x, 4);
    });

    it('is a guess with a wide interval where none was measured', () => {
        const { face, back, basis } = kerfWidth(beam, [], settings);
        expect(basis).toBe('guess');
        expect(face.high / face.value).toBeGreaterThan(1.25);
        expect(back.value).toBeLessThan(face.value);
        expect(back.high / back.value).toBeGreaterThan(face.high / face.value);
    });

    it('is what was measured, narrower where the cut is faster, and surer with more tests', () => {
        const one = kerfWidth(beam, [row(0.24, 0.17)], settings);
        expect(one.basis).toBe('measured');
        expect(one.face.value).toBeCloseTo(0.24, 3);
        expect(one.back.value).toBeCloseTo(0.17, 3);
        const faster = kerfWidth(beam, [row(0.24)], { ...settings, speed: 80 });
        expect(faster.face.value).toBeLessThan(0.22);
        expect(faster.face.value).toBeGreaterThan(0.15);
        const many = kerfWidth(
            beam,
            [0.23, 0.24, 0.25, 0.24, 0.24, 0.24].map((each) => row(each)),
            settings,
        );
        const width = ({ low, high }: { low: number; high: number }): number => high - low;
        expect(width(many.face)).toBeLessThan(width(one.face));
        expect(width(one.face)).toBeLessThan(width(kerfWidth(beam, [], settings).face));
        const scattered = kerfWidth(
            beam,
            [0.18, 0.32, 0.2, 0.3, 0.24, 0.24].map((each) => row(each)),
            settings,
        );
        expect(width(scattered.face)).toBeGreaterThan(1.5 * width(many.face));
    });

    it('is what the recipe says, before all that', () => {
        const { face, basis } = kerfWidth(beam, [row(0.24)], settings, mm(0.3, 0.02));
        expect(basis).toBe('written');
        expect([face.low, face.value, face.high]).toEqual([0.28, 0.3, 0.32].map((each) => expect.closeTo(each, 9)));
    });

    it('covers the next cut: of 2000 made-up shops 93 to 98 in a hundred', () => {
        let state = 7;
        const random = (): number => {
            state = (state * 1664525 + 1013904223) % 4294967296;
            return (state + 0.5) / 4294967296;
        };
        const normal = (): number => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
        let held = 0;
        for (let shop = 0; shop < 2000; shop++) {
            const own = 0.24 * Math.exp(0.13 * normal());
            const tests = Array.from({ length: 1 + (shop % 4) }, () => row(own * Math.exp(0.05 * normal()) + 0.015 * normal()));
            const { face } = kerfWidth(beam, tests, settings);
            const next = own * Math.exp(0.05 * normal());
            if (next >= face.low && next <= face.high) held++;
        }
        expect(held / 2000).toBeGreaterThan(0.93);
        expect(held / 2000).toBeLessThan(0.985);
    });
});
