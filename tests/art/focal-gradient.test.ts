import { describe, expect, it } from 'vitest';
import { locatorOf } from '../../shared/art/compose/shading';
import { painted } from '../../shared/art/painted';
import { readSvg } from '../../shared/art/read-svg';
import { area, contains } from '../../shared/geometry/measure';

/** A rectangle filled from white at the focal point to black at the circle. */
const region = (spread: string, rect = '<rect x="10" y="10" width="80" height="80" fill="url(#g)"/>') =>
    painted(
        readSvg(
            `<svg width="100mm" height="100mm" viewBox="0 0 100 100"><radialGradient id="g" gradientUnits="userSpaceOnUse" cx="60" cy="45" r="24" fx="48" fy="51" spreadMethod="${spread}"><stop stop-color="#fff"/><stop offset="1" stop-color="#000"/></radialGradient>${rect}</svg>`,
        ),
        [],
    );

/** Where on the gradient a place lies: t of the circle around f + t·(c − f) of radius t·r that goes through it (SVG 2, 14.2.3), by halving. */
function along(x: number, y: number): number {
    let [low, high] = [0, 100];
    for (let i = 0; i < 60; i++) {
        const t = (low + high) / 2;
        if (Math.hypot(x - (48 + t * 12), y - (51 - t * 6)) > t * 24) low = t;
        else high = t;
    }
    return low;
}

describe('a gradient from a focal point beside the middle of its circle', () => {
    it('is half as dark on the circle half way between the two', () => {
        const dark = region('pad');
        expect(area(dark)).toBeCloseTo(80 * 80 - Math.PI * 12 ** 2, 0);
        // That circle's own extremes: its middle is (54, 48), its radius 12.
        for (const [dx, dy] of [
            [1, 0],
            [-1, 0],
            [0, 1],
            [0, -1],
        ] as const) {
            expect(contains(dark, 54 + 11.8 * dx, 48 + 11.8 * dy)).toBe(false);
            expect(contains(dark, 54 + 12.2 * dx, 48 + 12.2 * dy)).toBe(true);
        }
    });

    for (const spread of ['reflect', 'repeat'] as const) {
        it.each([
            ['all around', 10, 10, 80, 80],
            ['where it widens slowest', 10, 52, 36, 38],
        ])(`goes on beyond its circle, ${spread}ed, as far as the shape does: %s`, (_, left, top, width, height) => {
            const dark = region(spread, `<rect x="${left}" y="${top}" width="${width}" height="${height}" fill="url(#g)"/>`);
            let looked = 0;
            for (let x = left + 1; x < left + width; x += 1.7) {
                for (let y = top + 1; y < top + height; y += 1.7) {
                    const t = along(x, y);
                    const turn = spread === 'reflect' ? 1 - Math.abs((t % 2) - 1) : t % 1;
                    // Near an edge the circles' corners decide.
                    if (Math.min(Math.abs(turn - 0.5), turn, 1 - turn) < 0.03) continue;
                    expect(contains(dark, x, y), `${x}, ${y}: ${t}`).toBe(turn > 0.5);
                    looked++;
                }
            }
            expect(looked).toBeGreaterThan(300);
        });
    }

    it('has the same places where many paints are looked through on a grid', () => {
        const circle = { cx: 60, cy: 45, r: 24, fx: 48, fy: 51, fr: 0 };
        const moved = { a: 2, b: 0, c: 0, d: 2, e: 5, f: -3 };
        const here = locatorOf({ matrix: { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }, spread: 'pad', circle });
        const there = locatorOf({ matrix: moved, spread: 'pad', circle });
        for (let x = 11; x < 90; x += 6.7) {
            for (let y = 11; y < 90; y += 6.7) {
                expect(here(x, y), `${x}, ${y}`).toBeCloseTo(along(x, y), 9);
                expect(there(2 * x + 5, 2 * y - 3), `${x}, ${y}`).toBeCloseTo(along(x, y), 9);
            }
        }
    });
});
