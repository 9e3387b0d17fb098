import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dither } from '../../shared/art/raster/dither';
import { resample } from '../../shared/art/raster/resample';
import { resolutionAt } from '../../shared/art/raster/resolution';
import { bendTones, toneCurve } from '../../shared/art/raster/tone';

const flat = (columns: number, rows: number, value: number) => ({
    columns,
    rows,
    darkness: new Uint8Array(columns * rows).fill(value),
});
const share = (dots: Uint8Array) => dots.reduce((sum, dot) => sum + dot, 0) / dots.length;

describe('dots', () => {
    for (const how of ['floyd-steinberg', 'jarvis-judice-ninke', 'ordered'] as const) {
        it(`${how}: as many burn as the grey is dark`, () => {
            for (const value of [0, 30, 64, 100, 128, 180, 255]) {
                expect(share(dither(flat(64, 64, value), how))).toBeCloseTo(value / 255, 1.5);
            }
        });
    }

    it('threshold: all or nothing', () => {
        expect([0, 127, 128, 255].map((value) => share(dither(flat(4, 4, value), 'threshold')))).toEqual([0, 0, 1, 1]);
    });

    it('ordered: more grey only ever adds dots', () => {
        let before = dither(flat(8, 8, 0), 'ordered');
        for (let value = 1; value <= 255; value++) {
            const dots = dither(flat(8, 8, value), 'ordered');
            expect(dots.every((dot, i) => dot >= before[i]!)).toBe(true);
            before = dots;
        }
    });
});

describe('tone curve', () => {
    const point = fc.record({ from: fc.double({ min: 0, max: 1, noNaN: true }), to: fc.double({ min: 0, max: 1, noNaN: true }) });

    it('goes through its points', () => {
        const curve = toneCurve([
            { from: 0.1, to: 0 },
            { from: 0.5, to: 0.7 },
            { from: 0.9, to: 1 },
        ]);
        expect([0, 0.1, 0.5, 0.9, 1].map(curve)).toEqual([0, 0, 0.7, 1, 1]);
    });

    it('takes points that can hardly be told apart for one', () => {
        const curve = toneCurve([
            { from: 0, to: 0 },
            { from: 5e-324, to: 0.5 },
            { from: 1, to: 1 },
        ]);
        expect([0, 1e-3, 0.5, 1].map(curve).every(Number.isFinite)).toBe(true);
    });

    it('never turns back where its points do not', () => {
        fc.assert(
            fc.property(fc.array(point, { minLength: 1, maxLength: 6 }), (points) => {
                const rising = points
                    .toSorted((a, b) => a.from - b.from)
                    .map(({ from }, i, all) => ({ from, to: all.map(({ to }) => to).toSorted((a, b) => a - b)[i]! }));
                const curve = toneCurve(rising);
                for (let x = 0; x < 1; x += 0.01) expect(curve(x + 0.01)).toBeGreaterThanOrEqual(curve(x) - 1e-9);
            }),
        );
    });

    it('without points, or with useless ones, changes nothing or no more than it must', () => {
        const raster = { columns: 256, rows: 1, darkness: Uint8Array.from({ length: 256 }, (_, i) => i) };
        expect(bendTones(raster, [])).toEqual(raster);
        expect(bendTones(raster, [{ from: Number.NaN, to: 1 }])).toEqual(raster);
        expect(
            bendTones(raster, [
                { from: 0, to: 0 },
                { from: 0, to: 9 },
                { from: 1, to: 1 },
            ]).darkness[128],
        ).toBe(128);
    });
});

describe('resampling', () => {
    it('halves by means', () => {
        expect([
            ...resample({ columns: 4, rows: 2, darkness: Uint8Array.of(0, 100, 200, 200, 100, 200, 0, 0) }, 2, 1).darkness,
        ]).toEqual([100, 100]);
    });

    it('keeps the mean, whatever the numbers', () => {
        fc.assert(
            fc.property(
                fc.integer({ min: 1, max: 20 }),
                fc.integer({ min: 1, max: 20 }),
                fc.infiniteStream(fc.nat(255)),
                (columns, rows, stream) => {
                    const raster = { columns: 13, rows: 7, darkness: Uint8Array.from({ length: 91 }, () => stream.next().value) };
                    const mean = (values: Uint8Array) => values.reduce((sum, value) => sum + value, 0) / values.length;
                    expect(Math.abs(mean(resample(raster, columns, rows).darkness) - mean(raster.darkness))).toBeLessThan(0.51);
                },
            ),
        );
    });
});

describe('resolution against the pitch', () => {
    it('counts pixels for each line, by the coarser side', () => {
        expect(resolutionAt({ width: 0.1, height: 0.05 }, 0.2)).toEqual({ pixel: 0.1, pixelsPerLine: 2 });
        expect(resolutionAt({ width: 0.1, height: 0.1 }, 0.05)!.pixelsPerLine).toBe(0.5);
    });

    it('of no pitch and no picture is nothing', () => {
        for (const pitch of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
            expect(resolutionAt({ width: 1, height: 1 }, pitch)).toBeUndefined();
        expect(resolutionAt({ width: 0, height: 0 }, 1)).toBeUndefined();
    });
});
